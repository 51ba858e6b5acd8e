/** `npm run bench`: one after the other in one process, so that all of them meet the same machine. Prints, judges nothing. */
await import('./big-build.ts');
await import('./identification.ts');
await import('./log-fuelling.ts');
await import('./pictures.ts');
await import('./round-trip.ts');
