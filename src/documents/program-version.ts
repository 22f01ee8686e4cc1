/** The program’s version, as printed and written into files; a test holds it to that of the package. */
export const PROGRAM_VERSION = '0.1.0';
