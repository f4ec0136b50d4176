import { type Api, GrammyError } from 'grammy';
import type { LanguageCode } from 'grammy/types';
import type { PersonId } from '../../domain/desk/person.ts';
import { type Log, codeOf } from '../../app/log.ts';

export type MenuCommand = Readonly<{ command: string; description: string }>;

/** The list that a client shows behind its menu button; `language` null for everyone whose language has none of its own. */
export type Menu = Readonly<{
  language: LanguageCode | null;
  buyer: readonly MenuCommand[];
  maker: readonly MenuCommand[];
}>;

/** Shows buyers their commands and each maker theirs. Only a list: what a command may do is decided when it comes.
 *  A maker who has not written to the program yet cannot be shown one; that is logged, and done at the next start. */
export async function showMenus(
  api: Api,
  menus: readonly Menu[],
  makers: readonly PersonId[],
  log: Log,
): Promise<void> {
  for (const menu of menus) {
    await tried(log, () =>
      api.setMyCommands([...menu.buyer], { scope: { type: 'all_private_chats' }, ...inLanguage(menu) }),
    );
    for (const id of makers)
      await tried(log, () =>
        api.setMyCommands([...menu.maker], { scope: { type: 'chat', chat_id: id }, ...inLanguage(menu) }),
      );
  }
}

const inLanguage = ({ language }: Menu) => (language === null ? {} : { language_code: language });

async function tried(log: Log, call: () => Promise<unknown>): Promise<void> {
  try {
    await call();
  } catch (error) {
    log('menu-failed', { code: error instanceof GrammyError ? error.error_code : codeOf(error) });
  }
}
