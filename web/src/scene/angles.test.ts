import { describe, expect, it } from "vitest";
import {
  direction,
  dot,
  lookedAt,
  ludwig3,
  rotation,
  seenAngle,
  thetaPhi,
  times,
  type Geometry,
  type Vector,
} from "./angles";

const close = (a: Vector, b: Vector) => a.forEach((v, i) => expect(v).toBeCloseTo(b[i], 12));
const sin = (deg: number) => Math.sin((deg * Math.PI) / 180);
const cos = (deg: number) => Math.cos((deg * Math.PI) / 180);

describe("angles of the conventions page", () => {
  // The table of positioners in docs: the direction under test, written out by hand.
  it("looks where the table says", () => {
    for (const [a, b] of [
      [0, 0],
      [35, 20],
      [-70, 110],
      [120, -45],
    ] as [number, number][]) {
      close(lookedAt("roll-over-azimuth", a, b), [sin(a) * cos(b), sin(a) * sin(b), cos(a)]);
      close(lookedAt("azimuth-over-elevation", a, b), [sin(a) * cos(b), sin(b), cos(a) * cos(b)]);
      close(lookedAt("elevation-over-azimuth", a, b), [sin(a), cos(a) * sin(b), cos(a) * cos(b)]);
    }
  });

  it("turns the looked-at direction to the probe", () => {
    for (const geometry of ["roll-over-azimuth", "azimuth-over-elevation", "elevation-over-azimuth"] as Geometry[])
      close(times(rotation(geometry, 33, -52), lookedAt(geometry, 33, -52)), [0, 0, 1]);
  });

  it("keeps theta and phi", () => {
    const [theta, phi] = thetaPhi(direction(64, -141));
    expect(theta).toBeCloseTo(64, 10);
    expect(phi).toBeCloseTo(-141, 10);
  });

  // Ludwig 1973, third definition: at boresight it is x for every phi; across the direction it is a unit vector.
  it("has Ludwig's third vector", () => {
    close(ludwig3(0, 77), [1, 0, 0]);
    close(ludwig3(0, 77, 90), [0, 1, 0]);
    expect(dot(ludwig3(50, 30), direction(50, 30))).toBeCloseTo(0, 12);
    expect(dot(ludwig3(50, 30), ludwig3(50, 30))).toBeCloseTo(1, 12);
    expect(dot(ludwig3(50, 30), ludwig3(50, 30, 90))).toBeCloseTo(0, 12);
  });

  // Conventions: a probe at chi = psi - phi measures exactly the slant-psi component at every theta.
  it("shows a probe on a roll over azimuth the slant minus the roll", () => {
    for (const theta of [10, 45, 80])
      for (const roll of [-120, -30, 0, 60])
        for (const slant of [0, 45]) {
          const turned = seenAngle("roll-over-azimuth", theta, roll, slant) - (slant - roll);
          expect(Math.abs(sin(turned))).toBeLessThan(1e-9);
          expect(cos(turned)).toBeCloseTo(1, 9);
        }
  });
});
