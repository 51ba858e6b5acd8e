import { parentPort, workerData } from 'node:worker_threads';
import { checkCopy } from './check-copy.ts';

/** Runs the check beside the program, which must go on answering while a whole file is read. */
parentPort?.postMessage(checkCopy(String(workerData)));
