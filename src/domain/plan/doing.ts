/** One thing the bench does, in order of time: a part of a hands task after its setup, or a load. */
export type Doing =
  | Readonly<{ does: 'part'; task: number; setup: number; start: number; end: number }>
  | Readonly<{
      does: 'load';
      recipe: number;
      start: number;
      out: number;
      end: number;
      tasks: readonly number[];
      heads: readonly number[];
    }>;
