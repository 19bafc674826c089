import { runDrywake } from './runDrywake.ts';

// One command line as a program of its own: measuredDrywake.ts FOLDER WORD… prints what became of it as JSON.
const [folder, ...argv] = process.argv.slice(2);
const ran = await runDrywake(argv, folder);
const peakMb = process.resourceUsage().maxRSS / 1024;
process.stdout.write(JSON.stringify({ ...ran, out: ran.out.slice(0, 2000), peakMb }));
