/** Imported first: an older Node would fail further on with an error that names neither the cause nor the cure. */
const MAJOR = Number(process.versions.node.split('.')[0]);

if (MAJOR < 26) {
  process.stderr.write(
    `Chargehand needs Node 26 and this is ${process.versions.node}. Start it with npm (npm start, npm run say), which brings its own.\n`,
  );
  process.exit(1);
}
