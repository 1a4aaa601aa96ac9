import { spawn } from 'node:child_process';

/** Asks the system to show an address; where it has no browser, the printed address is all there is. */
export function openBrowser(url: string): void {
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open', url]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', url]
        : ['xdg-open', url];
  const child = spawn(command!, args, { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}
