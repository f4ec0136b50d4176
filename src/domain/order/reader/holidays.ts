import { Temporal } from 'temporal-polyfill';

type Feast = (year: number) => Temporal.PlainDate;
const fixed =
  (month: number, day: number): Feast =>
  (year) =>
    Temporal.PlainDate.from({ year, month, day });

/** The next coming of a holiday by which buyers set a day; null for one not in the table. */
export function holiday(name: string, today: Temporal.PlainDate): Temporal.PlainDate | null {
  const feast = FEASTS[name];
  if (!feast) return null;
  return (
    [0, 1].map((add) => feast(today.year + add)).find((day) => Temporal.PlainDate.compare(day, today) >= 0) ?? null
  );
}

const FEASTS: Readonly<Record<string, Feast>> = {
  christmas: fixed(12, 25),
  'christmas-eve': fixed(12, 24),
  'new-year': fixed(1, 1),
  independence: fixed(7, 4),
  halloween: fixed(10, 31),
  valentine: fixed(2, 14),
  thanksgiving: (year) => nth(year, 11, 4, 4),
  labor: (year) => nth(year, 9, 1, 1),
  fathers: (year) => nth(year, 6, 7, 3),
  mothers: (year) => nth(year, 5, 7, 2),
  memorial: (year) => lastMonday(year, 5),
  easter,
};

/** The nth such weekday of a month; 1 is Monday. */
function nth(year: number, month: number, weekday: number, count: number): Temporal.PlainDate {
  const first = Temporal.PlainDate.from({ year, month, day: 1 });
  return first.add({ days: ((weekday - first.dayOfWeek + 7) % 7) + 7 * (count - 1) });
}

function lastMonday(year: number, month: number): Temporal.PlainDate {
  const first = Temporal.PlainDate.from({ year, month, day: 1 });
  const last = first.with({ day: first.daysInMonth });
  return last.subtract({ days: last.dayOfWeek - 1 });
}

/** Western Easter by the anonymous Gregorian computus (Nature, 1876). */
function easter(year: number): Temporal.PlainDate {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const h = (19 * a + b - Math.floor(b / 4) - Math.floor((b - Math.floor((b + 8) / 25) + 1) / 3) + 15) % 30;
  const l = (32 + 2 * (b % 4) + 2 * Math.floor(c / 4) - h - (c % 4)) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const n = h + l - 7 * m + 114;
  return Temporal.PlainDate.from({ year, month: Math.floor(n / 31), day: (n % 31) + 1 });
}
