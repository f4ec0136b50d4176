import { openStory, type Story, type StoryParts } from '../stories/story.ts';

/** A rule by its number, what it says, and what proves it. */
export type Rule = readonly [number, string, () => Promise<void> | void];

export const ADDRESS = 'Pat Shore\n12 Shore Road\nColumbus, OH 43004';
/** Whatever a buyer typed, and the token. */
export const SECRETS = /Shore Road|Pat Shore|quarter ounce|rehearsal-on-this-computer/;

export async function inStory(tell: (story: Story) => Promise<void>, parts: StoryParts = {}): Promise<void> {
  const opened = await openStory(parts, Infinity);
  try {
    await tell(opened.story);
  } finally {
    await opened.close();
  }
}

/** A buyer's order K-1001 with its address. */
export async function ordered({ buyer }: Story): Promise<void> {
  await buyer.says('25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio');
  await buyer.taps('Order this');
  await buyer.says(ADDRESS);
}
