import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import { wallAt, weekdayAt } from '../../src/domain/craft/wall.ts';

/** Zones with and without clock changes, with odd offsets, and one that changes by half an hour (IANA Time Zone Database). */
const ZONES = [
  'America/Chicago',
  'Pacific/Auckland',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Africa/Casablanca',
  'America/Havana',
  'Pacific/Apia',
  'Europe/Dublin',
  'UTC',
];

/** The wall clock as the Temporal proposal's polyfill tells it, asked anew each time. */
function witness(at: number, zone: string) {
  const local = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);
  const shows = local.toPlainDateTime().toString({ fractionalSecondDigits: 3 });
  return { shows, offset: local.offset, weekday: local.dayOfWeek - 1 };
}

const ours = (at: number, zone: string) => ({ ...wallAt(at, zone), weekday: weekdayAt(at, zone) });

test('a wall clock shows what Temporal says, in whatever order it is asked', () => {
  const moment = fc.integer({ min: Date.UTC(2000, 0), max: Date.UTC(2060, 0) });
  fc.assert(
    fc.property(fc.array(fc.tuple(moment, fc.constantFrom(...ZONES)), { maxLength: 20 }), (asked) => {
      for (const [at, zone] of asked) expect(ours(at, zone)).toEqual(witness(at, zone));
    }),
  );
});

test.each(ZONES)('in %s it is right to the millisecond around every clock change', (zone) => {
  let change: Temporal.ZonedDateTime | null = Temporal.ZonedDateTime.from(`2010-01-01T00:00[${zone}]`);
  for (let count = 0; count < 30 && change; count += 1) {
    const at = change.epochMilliseconds;
    for (const near of [at, at - 1, at + 1, at, at + 3_600_000]) expect(ours(near, zone)).toEqual(witness(near, zone));
    change = change.getTimeZoneTransition('next');
  }
});
