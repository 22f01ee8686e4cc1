/** The one function we use of quadprog; its arrays count from 1. */
declare module 'quadprog' {
  interface QuadraticSolution {
    readonly solution: number[];
    readonly Lagrangian: number[];
    /** empty where there is a solution */
    readonly message: string;
  }
  const quadprog: {
    solveQP(D: number[][], d: number[], A: number[][], b: number[]): QuadraticSolution;
  };
  export default quadprog;
}
