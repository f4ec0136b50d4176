import { hookRank, type HookSize } from '../craft/hook.ts';
import type { Check } from './check.ts';
import { anyOf, faultAt, repeated, unknownName, type Fault, type Path } from './fault.ts';
import { entries, idsOf, type SoundParts } from './sound.ts';

/** What must hold for molds, their cavities, and the guards that go into their holes. */
export const MOLD_CHECKS: readonly Check[] = [
  styleKnown,
  patternKnown,
  weightOnce,
  hookOnce,
  keeperOnce,
  measuredHookFits,
  measuredMetalKnown,
  measuredOnce,
  guardFitsAPin,
];

/** A mold casts a style of the shop. */
function styleKnown(shop: SoundParts): Fault[] {
  const styles = idsOf(shop.styles);
  return entries(shop.molds).flatMap(([at, { style }]) => unknownName(['molds', at, 'style'], style, styles));
}

/** A mold takes a hook pattern of the shop. */
function patternKnown(shop: SoundParts): Fault[] {
  const patterns = idsOf(shop.patterns);
  return entries(shop.molds).flatMap(([at, { pattern }]) => unknownName(['molds', at, 'pattern'], pattern, patterns));
}

/** A mold states each weight once, with the count of its cavities. */
function weightOnce(shop: SoundParts): Fault[] {
  return entries(shop.molds).flatMap(([at, { cavities }]) =>
    repeated(
      entries(cavities).map(([place, { weight }]) => [['molds', at, 'cavities', place, 'weight'], weight]),
      'a weight',
    ),
  );
}

/** A cavity states each hook size once. */
function hookOnce(shop: SoundParts): Fault[] {
  return cavitiesOf(shop).flatMap(({ path, cavity }) =>
    repeated(
      entries(cavity.hooks).map(([place, hook]) => [[...path, 'hooks', place], hook]),
      'a hook size',
    ),
  );
}

/** A mold states each keeper once. */
function keeperOnce(shop: SoundParts): Fault[] {
  return entries(shop.molds).flatMap(([at, { keepers }]) =>
    repeated(
      entries(keepers).map(([place, keeper]) => [['molds', at, 'keepers', place], keeper]),
      'a keeper',
    ),
  );
}

/** A finished head was weighed with a hook that fits its cavity. */
function measuredHookFits(shop: SoundParts): Fault[] {
  return cavitiesOf(shop).flatMap(({ path, cavity }) => {
    const hooks = (cavity.hooks ?? []).flatMap((hook) => hook ?? []);
    return entries(cavity.measured)
      .filter(([, { hook }]) => hook !== undefined && hooks.length === cavity.hooks?.length && !hooks.includes(hook))
      .map(([at, { hook }]) => faultAt([...path, 'measured', at, 'hook'], hook, anyOf(hooks), nearHook(hook, hooks)));
  });
}

/** A finished head was weighed in a metal of the shop. */
function measuredMetalKnown(shop: SoundParts): Fault[] {
  const metals = idsOf(shop.metals);
  return cavitiesOf(shop).flatMap(({ path, cavity }) =>
    entries(cavity.measured).flatMap(([place, { metal }]) =>
      unknownName([...path, 'measured', place, 'metal'], metal, metals),
    ),
  );
}

/** A finished head is weighed once for a hook and a metal. */
function measuredOnce(shop: SoundParts): Fault[] {
  return cavitiesOf(shop).flatMap(({ path, cavity }) =>
    repeated(
      entries(cavity.measured).map(([place, { hook, metal }]) => [
        [...path, 'measured', place],
        hook === undefined || metal === undefined ? undefined : `${hook} in ${metal}`,
      ]),
      'a hook and metal',
    ),
  );
}

/** A guard is as thick as the pin of some mold, else no hole takes it. */
function guardFitsAPin(shop: SoundParts): Fault[] {
  const pins = (shop.molds ?? []).map((mold) => mold?.pin);
  if (shop.molds === undefined || pins.includes(undefined)) return [];
  const diameters = [...new Set(pins.flatMap((pin) => pin ?? []))];
  const allowed = `the thickness of a mold's pin: ${anyOf(diameters)}`;
  return entries(shop.guards).flatMap(([at, { diameter }]) =>
    diameter === undefined || diameters.includes(diameter)
      ? []
      : [faultAt(['guards', at, 'diameter'], diameter, allowed, diameters.length === 1 ? diameters[0] : undefined)],
  );
}

/** The size that is the fewest sizes away. */
const nearHook = (size = '', sizes: readonly HookSize[]): HookSize | undefined =>
  sizes.toSorted((a, b) => gap(size, a) - gap(size, b))[0];

const gap = (a: HookSize, b: HookSize): number => Math.abs(hookRank(a) - hookRank(b));

type PlacedCavity = Readonly<{
  path: Path;
  cavity: NonNullable<NonNullable<NonNullable<NonNullable<SoundParts['molds']>[number]>['cavities']>[number]>;
}>;

const cavitiesOf = (shop: SoundParts): PlacedCavity[] =>
  entries(shop.molds).flatMap(([at, { cavities }]) =>
    entries(cavities).map(([place, cavity]) => ({ path: ['molds', at, 'cavities', place], cavity })),
  );
