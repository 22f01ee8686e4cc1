/** Real linear systems: the one door by which the matrix package comes in. */
export { Matrix, solve } from 'ml-matrix';
