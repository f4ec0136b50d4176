import { BACKGROUND, CAST_METAL, darker, INK, lighter, STEEL } from './headColours.ts';
import type { HeadLook } from './headLook.ts';
import type { Point } from './headOutlines.ts';
import type { HeadSize } from './headSize.ts';
import { along, at, rounded } from './strokes.ts';

/** The hook with its eye, its round bend, and its barbed point. */
export function hookDrawing({ turn, eye, bend, gap, axis, wire }: HeadSize): string {
  const point = bend - gap * 1.15;
  const top = axis - gap;
  const shank = `M${at(towards(eye, turn, wire * 1.9))}L${at(turn)}L${at([bend, axis])}A${rounded(gap / 2)} ${rounded(gap / 2)} 0 0 0 ${at([bend, top])}L${at([point, top - gap * 0.06])}`;
  const barb = `M${at([point + gap * 0.3, top - gap * 0.03])}L${at([point + gap * 0.5, top + gap * 0.13])}`;
  const tip = `M${at([point - wire * 2.2, top - gap * 0.07])}L${at([point + wire, top - gap * 0.06 - wire * 0.72])}L${at([point + wire, top - gap * 0.06 + wire * 0.72])}Z`;
  return [
    along(shank, BACKGROUND, wire * 1.45 + 5),
    `<path d="${tip}" fill="${INK}" stroke="${BACKGROUND}" stroke-width="4"/>`,
    along(barb, INK, wire * 0.9),
    along(shank, INK, wire * 1.45),
    `<path d="${tip}" fill="${INK}"/>`,
    ring(eye, wire * 1.9, INK, wire * 1.35),
    along(shank, STEEL, wire * 0.75),
    ring(eye, wire * 1.9, STEEL, wire * 0.65),
  ].join('');
}

/** The cast body, glossy under paint and matt when bare. */
export function bodyDrawing({ outline, unit }: HeadSize, { shape, paint }: HeadLook): string {
  const colour = paint?.colour ?? CAST_METAL;
  const gloss = paint === null ? 0.35 : 0.6;
  const ridges = `fill="none" stroke="${darker(colour, 0.45)}" stroke-width="${rounded(2.4 / unit)}"`;
  return [
    `<g transform="scale(${rounded(unit)})" stroke-linejoin="round">`,
    `<path d="${outline.edge}" fill="url(#${paint === null ? 'bare' : paintId(colour)})"/>`,
    `<g clip-path="url(#edge-${shape})"><path d="${outline.lines}" ${ridges}/>`,
    `<path d="${outline.shine}" fill="#ffffff" fill-opacity="${gloss}"/></g>`,
    `<path d="${outline.edge}" fill="none" stroke="${INK}" stroke-width="${rounded(3.2 / unit)}"/>`,
    '</g>',
  ].join('');
}

/** What `bodyDrawing` refers to; named by what it holds, so that several heads may share a page. */
export function bodyFills({ outline }: HeadSize, { shape, paint }: HeadLook): string {
  const colour = paint?.colour ?? CAST_METAL;
  return [
    `<clipPath id="edge-${shape}"><path d="${outline.edge}"/></clipPath>`,
    shading(paintId(colour), [lighter(colour, 0.28), colour, colour, darker(colour, 0.3)]),
    shading('bare', [lighter(CAST_METAL, 0.5), CAST_METAL, lighter(CAST_METAL, 0.35), darker(CAST_METAL, 0.3)]),
  ].join('');
}

const paintId = (colour: string): string => `paint-${colour.slice(1)}`;

function shading(id: string, colours: readonly [string, string, string, string]): string {
  const stops = colours.map((colour, place) => `<stop offset="${STOPS[place]}" stop-color="${colour}"/>`);
  return `<linearGradient id="${id}" x1="0" y1="0" x2="0.28" y2="1">${stops.join('')}</linearGradient>`;
}

const STOPS = [0, 0.35, 0.52, 1];

/** The guard: a bundle of fibres out of its hole, spreading in front of the point. */
export function guardDrawing({ outline, unit, bend, gap, axis }: HeadSize, colour: string): string {
  const base: Point = [outline.hole[0] * unit, (outline.hole[1] + 12) * unit];
  const aim: Point = [bend - gap * 0.95, axis - gap * 1.28];
  const fibres = Array.from({ length: FIBRES }, (_, place) => fibre(base, aim, place / (FIBRES - 1) - 0.5));
  return [along(fibres.join(''), INK, 5), along(fibres.join(''), colour, 2.8)].join('');
}

const FIBRES = 11;

function fibre([x, y]: Point, [toX, toY]: Point, spread: number): string {
  const across = [-(toY - y), toX - x].map((part) => part * spread * 0.3);
  const start: Point = [x + spread * 10, y + spread * 6];
  return `M${at(start)}L${at([toX + (across[0] ?? 0), toY + (across[1] ?? 0)])}`;
}

/** The point `far` pixels from one point on the way to another. */
function towards([x, y]: Point, [toX, toY]: Point, far: number): Point {
  const share = far / Math.hypot(toX - x, toY - y);
  return [x + (toX - x) * share, y + (toY - y) * share];
}

const ring = ([x, y]: Point, radius: number, colour: string, width: number): string =>
  `<circle cx="${rounded(x)}" cy="${rounded(y)}" r="${rounded(radius)}" fill="none" stroke="${colour}" stroke-width="${rounded(width)}"/>`;
