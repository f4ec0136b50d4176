import { Bot } from 'grammy';

/** A poll waits this long for an update, and any call is given up somewhat later: one that hangs must not hold up a chat for long. */
export const POLL_SECONDS = 30;
const CALL_SECONDS = 45;

/** The platform under a token. Nothing is called yet. */
export const connect = (token: string, apiRoot: string | null): Bot =>
  new Bot(token, {
    client: { timeoutSeconds: CALL_SECONDS, sensitiveLogs: false, ...(apiRoot === null ? {} : { apiRoot }) },
  });
