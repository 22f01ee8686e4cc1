import { runProgram } from './program.ts';

const { code, out, err } = runProgram(process.argv.slice(2));
process.stdout.write(out);
process.stderr.write(err);
process.exitCode = code;
