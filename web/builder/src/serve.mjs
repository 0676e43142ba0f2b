// Serves the built page on the loopback address. Given on the command line: the port, when one was asked for.
import { preview } from 'vite';

const asked = process.argv[1];
try {
  const server = await preview({
    logLevel: 'warn',
    preview: { host: '127.0.0.1', port: Number(asked ?? 4173), strictPort: asked !== undefined },
  });
  console.log(`The page is at ${server.resolvedUrls.local[0]} (Ctrl-C ends it)`);
} catch (error) {
  console.error(`The page cannot be served: ${error.message}`);
  process.exit(1);
}
