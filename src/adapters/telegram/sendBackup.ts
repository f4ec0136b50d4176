import { type Api, InputFile } from 'grammy';
import type { PersonId } from '../../domain/desk/person.ts';
import { Halt } from '../../app/exit.ts';
import { outcomeOf } from './outcome.ts';

/** Sends a sealed backup into a person's own chat, without a sound.
 *  @throws Error that says what came of it, and nothing else, when it did not get there. */
export async function sendBackup(api: Api, to: PersonId, bytes: Uint8Array, name: string): Promise<void> {
  if (bytes.length > MOST) throw new Halt('failed', 'The backup is larger than the chat platform takes (50 MB).');
  const call = api.sendDocument(to, new InputFile(bytes, name), { disable_notification: true });
  const failure = await call.then(() => null, outcomeOf);
  if (failure !== null) throw new Error(`The backup was not sent (${failure.is}).`);
}

const MOST = 50 * 1024 * 1024;
