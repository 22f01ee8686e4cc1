import type { HornPicture, PicturePad } from './horn-picture.model.ts';

/** A box on the screen, px from the frame's corner. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** How a pad lies on the screen, and where its words stand. */
export interface PadPlace {
  readonly pad: PicturePad;
  readonly x: number;
  readonly y: number;
  readonly padPx: number;
  readonly holePx: number;
  readonly label: Box;
  /** shown in the label's second line; empty where there is room for the number alone */
  readonly name: string;
  /** from the label to the pad's edge */
  readonly leader: string;
  /** the part of the hole filled to its vent share, from below; null where it is not known */
  readonly levelPath: string | null;
}

/**
 * How a picture lies in a frame: lying, neck left and the player's right below, or upright, neck on top and the
 * player's right at the left, as one sees it who looks at the stacks. One is the other turned, not mirrored.
 */
export interface HornPicturePlace {
  readonly upright: boolean;
  readonly width: number;
  readonly height: number;
  readonly pxPerMm: number;
  readonly wallPath: string;
  readonly middlePath: string;
  /** round the wall where sections of the bore meet */
  readonly jointsPath: string;
  readonly pads: readonly PadPlace[];
  readonly vents: readonly { readonly x: number; readonly y: number; readonly holePx: number }[];
}

/** Below this width, px, the horn stands upright. */
const UPRIGHT_BELOW = 480;
/** The tallest wall of a lying horn, px. */
const TALLEST = 260;
/** A label's sides, px: along the row of labels, lying and upright. A finger needs 44 and a gap of two. */
const LYING = { along: 60, bare: 28, across: 46 } as const;
const STANDING = { along: 46, bare: 46, across: 78 } as const;
/** Between labels and wall, px. */
const LEAD = 12;
const EDGE = 8;
/** The narrowest a wall may be drawn, px. */
const NARROWEST = 80;
/** Width of a letter in a label, px, on the wide side. */
const LETTER = 7;
/** A pad this near the line of the stacks, mm, may have its words on either side. */
const NEAR_MIDDLE_MM = 1;

/**
 * Lays a picture into a frame of a width; its height follows. Labels stand in a row on either side of the wall, in
 * the pads' order, as near to their pads as they can without touching one another.
 *
 * @param widthPx of the frame; where even bare numbers need more, the picture is larger
 */
export function placeHornPicture(picture: HornPicture, widthPx: number): HornPicturePlace {
  const upright = widthPx < UPRIGHT_BELOW;
  const slot = upright ? STANDING : LYING;
  const sides = sidesOf(picture.pads);
  const most = Math.max(...sides.map((side) => side.length));
  const named = upright || most * slot.along <= widthPx - 2;
  const slotAlong = named ? slot.along : slot.bare;
  const acrossRoom = slot.across + LEAD;
  const pxPerMm = upright
    ? Math.max(NARROWEST, widthPx - 2 * acrossRoom) / (2 * picture.halfMm)
    : Math.min((widthPx - 2 * EDGE) / picture.lengthMm, TALLEST / (2 * picture.halfMm));
  const wallAlong = picture.lengthMm * pxPerMm;
  const along = Math.max(upright ? wallAlong + 2 * EDGE : widthPx, most * slotAlong + 2);
  const across = 2 * (acrossRoom + picture.halfMm * pxPerMm);
  const start = (along - wallAlong) / 2;
  const middle = across / 2;
  const to = (xMm: number, yMm: number): readonly [x: number, y: number] => {
    const a = start + xMm * pxPerMm;
    const c = yMm * pxPerMm;
    return upright ? [middle - c, a] : [a, middle + c];
  };
  const pads = sides.flatMap((side, s) => {
    const targets = side.map((pad) => start + pad.xMm * pxPerMm);
    const places = spreadAlong(targets, slotAlong, along);
    // On top or at the left stands what is on the player's left of a lying horn, on the right of an upright one.
    const near = (s === 0) === !upright;
    return side.map((pad, i) => {
      const [x, y] = to(pad.xMm, pad.yMm);
      const label = labelBox(
        { centre: places[i], along: slotAlong, across: slot.across },
        near ? 0 : across - slot.across,
        upright,
      );
      return padPlace(pad, { x, y, pxPerMm }, label, { near, upright, named });
    });
  });
  pads.sort((a, b) => a.pad.xMm - b.pad.xMm);
  return {
    upright,
    width: upright ? across : along,
    height: upright ? along : across,
    pxPerMm,
    wallPath: wallPath(picture, to),
    middlePath: `M ${to(0, 0).join(' ')} L ${to(picture.lengthMm, 0).join(' ')}`,
    jointsPath: picture.joints
      .filter((j) => j.xMm < picture.lengthMm)
      .map((j) => `M ${to(j.xMm, -j.halfMm).join(' ')} L ${to(j.xMm, j.halfMm).join(' ')}`)
      .join(' '),
    pads,
    vents: picture.vents.map((v) => {
      const [x, y] = to(v.xMm, v.yMm);
      return { x, y, holePx: v.holeMm * pxPerMm };
    }),
  };
}

/** The pad nearest to a point, by its edge, within reach; null where none is. */
export function padAt(place: HornPicturePlace, x: number, y: number, reachPx: number): PicturePad | null {
  let nearest: PicturePad | null = null;
  let least = reachPx;
  for (const { pad, x: px, y: py, padPx } of place.pads) {
    const away = Math.hypot(x - px, y - py) - padPx / 2;
    if (away <= least) [nearest, least] = [pad, away];
  }
  return nearest;
}

/** Pads with their words on the player's left and on the player's right, each from neck to bell. */
function sidesOf(pads: readonly PicturePad[]): readonly [PicturePad[], PicturePad[]] {
  const sides: [PicturePad[], PicturePad[]] = [
    pads.filter((p) => p.yMm < -NEAR_MIDDLE_MM),
    pads.filter((p) => p.yMm > NEAR_MIDDLE_MM),
  ];
  for (const pad of pads) {
    if (Math.abs(pad.yMm) > NEAR_MIDDLE_MM) continue;
    (sides[0].length <= sides[1].length ? sides[0] : sides[1]).push(pad);
  }
  for (const side of sides) side.sort((a, b) => a.xMm - b.xMm);
  return sides;
}

/**
 * Centres of slots of one size in a row, in order, touching at most, as near to their targets as can be in the
 * sense of least squares.
 *
 * @param targets rising
 * @param room    the row's length; at least all slots together
 */
export function spreadAlong(targets: readonly number[], size: number, room: number): number[] {
  // With each slot's own share of the row taken off, slots may coincide and must only not fall: pooling neighbours
  // that do gives the nearest rising row.
  const pools: { sum: number; count: number }[] = [];
  targets.forEach((target, i) => {
    let pool = { sum: target - i * size, count: 1 };
    for (;;) {
      const last = pools[pools.length - 1];
      if (last === undefined || last.sum / last.count <= pool.sum / pool.count) break;
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
    }
    pools.push(pool);
  });
  const low = size / 2;
  const high = room - size / 2 - (targets.length - 1) * size;
  const level = pools.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count));
  return level.map((u, i) => Math.max(low, Math.min(high, u)) + i * size);
}

function labelBox(
  { centre, along, across }: { readonly centre: number; readonly along: number; readonly across: number },
  from: number,
  upright: boolean,
): Box {
  return upright
    ? { left: from, top: centre - along / 2, width: across, height: along }
    : { left: centre - along / 2, top: from, width: along, height: across };
}

function padPlace(
  pad: PicturePad,
  { x, y, pxPerMm }: { readonly x: number; readonly y: number; readonly pxPerMm: number },
  label: Box,
  how: { readonly near: boolean; readonly upright: boolean; readonly named: boolean },
): PadPlace {
  const padPx = pad.padMm * pxPerMm;
  const holePx = pad.holeMm * pxPerMm;
  const [fromX, fromY] = how.upright
    ? [how.near ? label.left + label.width : label.left, label.top + label.height / 2]
    : [label.left + label.width / 2, how.near ? label.top + label.height : label.top];
  const away = Math.hypot(fromX - x, fromY - y);
  const toEdge = away === 0 ? 0 : Math.min(1, padPx / 2 / away);
  return {
    pad,
    x,
    y,
    padPx,
    holePx,
    label,
    name: how.named ? shortName(pad.name, Math.floor(label.width / LETTER)) : '',
    leader: `M ${fromX} ${fromY} L ${x + (fromX - x) * toEdge} ${y + (fromY - y) * toEdge}`,
    levelPath: pad.ventShare === null ? null : levelPath(x, y, holePx / 2, pad.ventShare),
  };
}

function wallPath(
  { edge, lengthMm, cut }: HornPicture,
  to: (xMm: number, yMm: number) => readonly [number, number],
): string {
  const right = edge.map((p) => to(p.xMm, p.halfMm));
  const left = edge.map((p) => to(p.xMm, -p.halfMm)).reverse();
  // Where the bell is left away the wall ends in a wave, as drawings break off.
  const half = edge[edge.length - 1].halfMm;
  const steps = 12;
  const wave = Array.from({ length: cut ? steps - 1 : 0 }, (_, i) =>
    to(lengthMm - (i % 2 === 0 ? half * 0.04 : 0), half - ((i + 1) / steps) * 2 * half),
  );
  return `M ${[...right, ...wave, ...left].map((p) => p.join(' ')).join(' L ')} Z`;
}

/** A round vessel filled to a share of its height, from below. */
function levelPath(x: number, y: number, r: number, share: number): string {
  const filled = Math.max(0, Math.min(1, share));
  if (filled === 0) return '';
  if (filled === 1) return `M ${x - r} ${y} a ${r} ${r} 0 1 0 ${2 * r} 0 a ${r} ${r} 0 1 0 ${-2 * r} 0 Z`;
  const level = r * (1 - 2 * filled);
  const half = Math.sqrt(r * r - level * level);
  const large = filled > 0.5 ? 1 : 0;
  return `M ${x - half} ${y + level} A ${r} ${r} 0 ${large} 0 ${x + half} ${y + level} Z`;
}

/** A name that fits under its number; the whole name is said and shown where the key is chosen. */
function shortName(name: string, letters: number): string {
  const short = name.replace('auxiliary', 'aux');
  return [...short].length <= letters ? short : `${[...short].slice(0, letters - 1).join('')}…`;
}
