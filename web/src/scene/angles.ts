/** Directions, rotations and field vectors of the conventions, for what moves on the page. Degrees in, unit vectors out.
 *
 * The formulas are those of geometry/conventions: device frame D with z the boresight; R turns device vectors into the
 * laboratory's, where z points to the probe and y up; the direction under test is d = R^T z.
 */

export type Vector = [number, number, number];
/** Rows of a rotation matrix. */
export type Matrix = [Vector, Vector, Vector];
export type Geometry = "roll-over-azimuth" | "azimuth-over-elevation" | "elevation-over-azimuth";

export const DEG = Math.PI / 180;
const sin = (deg: number) => Math.sin(deg * DEG);
const cos = (deg: number) => Math.cos(deg * DEG);

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function combine(a: number, u: Vector, b: number, v: Vector): Vector {
  return [a * u[0] + b * v[0], a * u[1] + b * v[1], a * u[2] + b * v[2]];
}

export function direction(theta: number, phi: number): Vector {
  return [sin(theta) * cos(phi), sin(theta) * sin(phi), cos(theta)];
}

/** Theta from 0 to 180 and phi from -180 to 180 degrees of a unit vector. */
export function thetaPhi(d: Vector): [number, number] {
  return [Math.acos(Math.max(-1, Math.min(1, d[2]))) / DEG, Math.atan2(d[1], d[0]) / DEG];
}

/** Indices of directions (three values each) that are not there already: cells of a pole's row are one direction. */
export function distinct(directions: ArrayLike<number>): number[] {
  const seen = new Set<string>(),
    out: number[] = [];
  for (let i = 0; 3 * i < directions.length; i++) {
    const key = [0, 1, 2].map((k) => Math.round(1e4 * directions[3 * i + k]) + 0).join();
    if (!seen.has(key)) {
      seen.add(key);
      out.push(i);
    }
  }
  return out;
}

export function times(m: Matrix, v: Vector): Vector {
  return [dot(m[0], v), dot(m[1], v), dot(m[2], v)];
}

export function product(a: Matrix, b: Matrix): Matrix {
  const column = (k: number): Vector => [b[0][k], b[1][k], b[2][k]];
  return a.map((row) => [0, 1, 2].map((k) => dot(row, column(k)))) as Matrix;
}

export function about(axis: "x" | "y" | "z", deg: number): Matrix {
  const c = cos(deg),
    s = sin(deg);
  if (axis === "x") return [[1, 0, 0], [0, c, -s], [0, s, c]]; // prettier-ignore
  if (axis === "y") return [[c, 0, s], [0, 1, 0], [-s, 0, c]]; // prettier-ignore
  return [[c, -s, 0], [s, c, 0], [0, 0, 1]]; // prettier-ignore
}

/** R of a positioner: first is the azimuth-like angle, second roll or elevation. */
export function rotation(geometry: Geometry, first: number, second: number): Matrix {
  if (geometry === "roll-over-azimuth") return product(about("y", -first), about("z", -second));
  if (geometry === "azimuth-over-elevation") return product(about("x", second), about("y", -first));
  return product(about("y", -first), about("x", second));
}

/** The direction under test in the device frame. */
export function lookedAt(geometry: Geometry, first: number, second: number): Vector {
  return rotation(geometry, first, second)[2];
}

/** The co-polar unit vector of Ludwig's third definition, reference x turned by a slant towards y. */
export function ludwig3(theta: number, phi: number, slant = 0): Vector {
  const t: Vector = [cos(theta) * cos(phi), cos(theta) * sin(phi), -sin(theta)];
  const p: Vector = [-sin(phi), cos(phi), 0];
  return combine(cos(phi - slant), t, -sin(phi - slant), p);
}

/** How a probe sees a field of the device: the angle of the field as the probe has it before it, counter-clockwise from x. */
export function seenAngle(geometry: Geometry, first: number, second: number, slant = 0): number {
  const r = rotation(geometry, first, second);
  const [theta, phi] = thetaPhi(r[2]);
  const field = times(r, ludwig3(theta, phi, slant));
  return Math.atan2(field[1], field[0]) / DEG;
}
