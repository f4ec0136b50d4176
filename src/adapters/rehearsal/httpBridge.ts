import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Halt } from '../../app/exit.ts';
import { codeOf } from '../../app/log.ts';

export type Answer = (request: Request) => Promise<Response>;
export type Listening = Readonly<{ url: string; close(): Promise<void> }>;

/** Serves `answer` on this computer only; port 0 takes any free one.
 *  @throws Halt when the port is taken or may not be used */
export async function listen(answer: Answer, port: number): Promise<Listening> {
  const server = createServer((incoming, outgoing) => {
    reply(answer, incoming, outgoing).catch(() => outgoing.destroy());
  });
  await new Promise<void>((ready, failed) => {
    server.once('error', (error) => failed(noPort(port, error)));
    server.listen(port, '127.0.0.1', ready);
  });
  const { port: taken } = server.address() as AddressInfo;
  const close = (): Promise<void> =>
    new Promise((closed) => {
      server.close(() => closed());
      server.closeAllConnections();
    });
  return { url: `http://127.0.0.1:${taken}`, close };
}

const noPort = (port: number, error: Error): Halt =>
  new Halt(
    'settings',
    `Port ${port} cannot be used (${codeOf(error)}): another program may have it. Set PORT to another number.`,
  );

async function reply(answer: Answer, incoming: IncomingMessage, outgoing: ServerResponse): Promise<void> {
  const gone = new AbortController();
  outgoing.on('close', () => gone.abort());
  const response = await answer(await requestOf(incoming, gone.signal));
  if (response.type === 'error') return void outgoing.destroy();
  outgoing.writeHead(response.status, Object.fromEntries(response.headers));
  if (response.body) await pipeline(Readable.fromWeb(response.body), outgoing);
  else outgoing.end();
}

async function requestOf(incoming: IncomingMessage, signal: AbortSignal): Promise<Request> {
  const chunks: Buffer[] = [];
  for await (const chunk of incoming) chunks.push(chunk as Buffer);
  const { method = 'GET', headers, url = '/' } = incoming;
  const body = method === 'GET' || method === 'HEAD' ? {} : { body: Buffer.concat(chunks) };
  const wanted = ['content-type', 'origin', 'sec-fetch-site', 'accept'].flatMap((name) => {
    const value = headers[name];
    return typeof value === 'string' ? [[name, value] as [string, string]] : [];
  });
  return new Request(new URL(url, `http://${headers.host ?? '127.0.0.1'}`), {
    method,
    headers: wanted,
    signal,
    ...body,
  });
}
