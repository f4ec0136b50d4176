import { z } from 'zod';
import { badRequest, done, method, type Method } from '../call.ts';
import { chatOf, type CommandList } from '../chats.ts';
import { CHAT_ID, lengthOf } from '../fields.ts';

export const getMe: Method = (chats) => ({ chats, result: chats.bot });

/** The stand-in never has a webhook, so there is none to delete; waiting updates go only when that is asked for. */
export const deleteWebhook = method(z.object({ drop_pending_updates: z.boolean().optional() }), (chats, fields) =>
  done(fields.drop_pending_updates === true ? { ...chats, updates: [] } : chats),
);

const COMMANDS = z.object({
  commands: z.array(z.object({ command: z.string(), description: z.string() })),
  scope: z.object({ type: z.string(), chat_id: CHAT_ID.optional() }).optional(),
  language_code: z.string().default(''),
});

export const setMyCommands = method(COMMANDS, (chats, { commands, scope, language_code }) => {
  if (commands.length > 100) return badRequest('BOT_COMMANDS_TOO_MUCH');
  if (commands.some(({ command }) => !/^[a-z0-9_]{1,32}$/.test(command))) return badRequest('BOT_COMMAND_INVALID');
  if (commands.some(({ description }) => !isDescribed(description)))
    return badRequest('BOT_COMMAND_DESCRIPTION_INVALID');
  if (scope?.chat_id !== undefined && !chatOf(chats, scope.chat_id)) return badRequest('chat not found');
  const list: CommandList = { scope: scopeName(scope), language: language_code, commands };
  const others = chats.commands.filter((old) => old.scope !== list.scope || old.language !== list.language);
  return done({ ...chats, commands: [...others, list] });
});

const isDescribed = (description: string): boolean => lengthOf(description) >= 1 && lengthOf(description) <= 256;

const scopeName = (scope: z.infer<typeof COMMANDS>['scope']): string =>
  scope?.chat_id === undefined ? (scope?.type ?? 'default') : `${scope.type} ${scope.chat_id}`;

export const setMyDescription = method(z.object({ description: z.string().default('') }), (chats, { description }) =>
  lengthOf(description) <= 512 ? done(chats) : badRequest('BOT_DESCRIPTION_TOO_LONG'),
);

export const setMyShortDescription = method(z.object({ short_description: z.string().default('') }), (chats, fields) =>
  lengthOf(fields.short_description) <= 120 ? done(chats) : badRequest('BOT_SHORT_DESCRIPTION_TOO_LONG'),
);
