/** How a positioner goes through its slices, as a path of angles; within the limits of the chamber that is declared. */

import { lookedAt, seenAngle, type Geometry, type Vector } from "../scene/angles";

export type Limits = { first: [number, number]; second: [number, number] };
export type Moment = { slice: number; first: number; second: number };

/** Names of the swept and the stepped axis, and what a slice is. */
export const SWEEPS: Record<Geometry, { swept: string; stepped: string; slice: string; poles: string }> = {
  "roll-over-azimuth": {
    swept: "azimuth",
    stepped: "roll",
    slice: "a great circle through boresight",
    poles: "All slices meet at +z, in front; slices over the whole circle meet at -z too.",
  },
  "azimuth-over-elevation": {
    swept: "azimuth",
    stepped: "elevation",
    slice: "a circle of constant elevation",
    poles: "The circles shrink towards +y and -y.",
  },
  "elevation-over-azimuth": {
    swept: "elevation",
    stepped: "azimuth",
    slice: "a circle of constant azimuth",
    poles: "The circles shrink towards +x and -x.",
  },
};

function span(limits: [number, number], low: number, high: number): [number, number] {
  const both: [number, number] = [Math.max(limits[0], low), Math.min(limits[1], high)];
  return both[0] < both[1] ? both : limits;
}

/** The slices that are shown: value of the stepped axis, and the ends of the sweep. */
export function slices(geometry: Geometry, limits: Limits): { stepped: number; from: number; to: number }[] {
  const roll = geometry === "roll-over-azimuth",
    steps = geometry === "elevation-over-azimuth" ? limits.first : limits.second,
    sweep = span(geometry === "elevation-over-azimuth" ? limits.second : limits.first, -90, 90);
  const wanted = (roll ? [0, 30, 60, 90, 120, 150] : [0, 20, 40, -20, -40]).filter(
    (v) => v >= steps[0] && v <= steps[1],
  );
  // An axis whose limits hold none of these shows the middle of what it reaches.
  return (wanted.length ? wanted : [(steps[0] + steps[1]) / 2]).map((stepped, i) =>
    i % 2 ? { stepped, from: sweep[1], to: sweep[0] } : { stepped, from: sweep[0], to: sweep[1] },
  );
}

/** Angles at a share of the whole play; a fifth of every slice is the step to it. */
export function moment(geometry: Geometry, limits: Limits, share: number): Moment {
  const all = slices(geometry, limits),
    place = Math.min(0.999999, Math.max(0, share)) * all.length,
    slice = Math.floor(place),
    part = place - slice,
    here = all[slice],
    before = all[Math.max(0, slice - 1)];
  const stepping = slice > 0 && part < 0.2;
  const stepped = stepping ? before.stepped + (here.stepped - before.stepped) * (part / 0.2) : here.stepped;
  const along = slice > 0 ? Math.max(0, (part - 0.2) / 0.8) : part;
  const swept = here.from + (here.to - here.from) * along;
  return geometry === "elevation-over-azimuth"
    ? { slice, first: stepped, second: swept }
    : { slice, first: swept, second: stepped };
}

/** The part of each slice that was swept by then, as directions of the device. */
export function swept(geometry: Geometry, limits: Limits, share: number): Vector[][] {
  const all = slices(geometry, limits),
    now = moment(geometry, limits, share);
  return all.slice(0, now.slice + 1).map((one, i) => {
    const here = geometry === "elevation-over-azimuth" ? now.second : now.first,
      end = i < now.slice ? one.to : here,
      count = Math.max(2, Math.ceil(Math.abs(end - one.from) / 2));
    return Array.from({ length: count }, (_, k) => {
      const v = one.from + ((end - one.from) * k) / (count - 1);
      return geometry === "elevation-over-azimuth"
        ? lookedAt(geometry, one.stepped, v)
        : lookedAt(geometry, v, one.stepped);
    });
  });
}

/** What the dial shows: angle of the field, of the probe, and the share of the field that the probe takes in. */
export function dial(
  geometry: Geometry,
  at: Moment,
  following: boolean,
): { field: number; probe: number; level: number } {
  const field = seenAngle(geometry, at.first, at.second),
    probe = following ? (geometry === "roll-over-azimuth" ? -at.second : field) : 0;
  return { field, probe, level: Math.cos(((field - probe) * Math.PI) / 180) };
}
