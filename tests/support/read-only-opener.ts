import { openRecordBook } from './record-book.ts';

/** Opens the records as somebody who may read but not write them, and prints what the program would say. */
const [path = ''] = process.argv.slice(2);
if (process.getuid?.() === 0) process.setuid?.(65_534); // root may write anything; "nobody" may not
try {
  openRecordBook(path);
  console.log('opened');
} catch (error) {
  console.log(error instanceof Error ? `${error.name}: ${error.message}` : String(error));
}
