/** What Explore looks at: one run, one state, one frequency; and where that stands in the address. */

import type { CutRequest, LevelsRequest, Opened, Overview, Of } from "../request/types";
import { numberOf, put, value } from "../shell/address";
import type { Subject } from "../shell/panel";
import { session } from "../shell/session";

export type BasisName = NonNullable<CutRequest["basis"]>;
export type CoordinatesName = NonNullable<LevelsRequest["coordinates"]>;
export type Component = "total" | "first" | "second";

export const BASES: [BasisName, string][] = [
  ["ludwig-3", "Ludwig 3"],
  ["theta-phi", "theta and phi"],
  ["ludwig-2-az-over-el", "Ludwig 2, pole y"],
  ["ludwig-2-el-over-az", "Ludwig 2, pole x"],
  ["circular", "circular"],
];
export const COORDINATES: [CoordinatesName, string][] = [
  ["theta-phi", "theta, phi"],
  ["az-el", "azimuth, elevation"],
  ["alpha-epsilon", "alpha, epsilon"],
  ["u-v", "direction cosines u, v"],
];
export const SHOWN: [Component, string][] = [
  ["total", "total"],
  ["first", "first component"],
  ["second", "second component"],
];

function oneOf<T extends string>(text: string, all: [T, string][], otherwise: T): T {
  return all.find(([key]) => key === text)?.[0] ?? otherwise;
}

export function ghz(hz: number): string {
  return `${(hz / 1e9).toFixed(3)} GHz`;
}

/** Which frequency of a run lies nearest to one in GHz, as the address has it. */
export function nearestOf(all_hz: readonly number[], ghz: number): number {
  return all_hz.reduce((best, f, i) => (Math.abs(f - 1e9 * ghz) < Math.abs(all_hz[best] - 1e9 * ghz) ? i : best), 0);
}

export class Looked {
  run = value("run");
  state: string | null = value("state") || null;
  off: string[] = value("off") ? value("off").split(" ") : [];
  gate: [number, number] | null = gateOf(value("gate"));
  frequency = -1;
  plane = numberOf("plane") ?? 0;
  basis = oneOf(value("basis"), BASES, "ludwig-3");
  /** Somebody chose the components; else those of the device's declared polarization are shown. */
  basisChosen = value("basis") !== "";
  coordinates = oneOf(value("coords"), COORDINATES, "theta-phi");
  component = oneOf(value("shown"), SHOWN, "total");
  beside: string[] = value("beside") ? value("beside").split(" ") : [];
  tab = value("tab") || "cuts";
  span = numberOf("span") ?? 50;
  known: Overview | null = null;
  /** Where the address asked for a frequency that this run does not hold: which, and which is shown. */
  moved = "";

  /** Something else than the recipe as it stands. */
  get tried(): boolean {
    return this.off.length > 0 || this.gate !== null;
  }

  get hz(): number {
    return this.known?.frequency_hz[this.frequency] ?? Number.NaN;
  }

  /** The unit of the levels that are shown. */
  get unit(): string {
    return this.known?.unit ?? "dB";
  }

  /** Take over an overview and find the frequency that the address or the run names. */
  open(known: Overview): void {
    this.known = known;
    // One of several states is always meant by its name.
    if (known.states.length > 1) this.state ??= known.states[0];
    if (!this.basisChosen) this.basis = known.basis;
    const all = known.frequency_hz,
      wanted = numberOf("f");
    if (wanted !== null) {
      this.frequency = nearestOf(all, wanted);
      const off = Math.abs(all[this.frequency] - 1e9 * wanted) > 1e-6 * Math.abs(1e9 * wanted);
      this.moved = off ? `${ghz(1e9 * wanted)} of the address was not measured: the nearest is shown.` : "";
    } else if (this.frequency < 0 || this.frequency >= all.length) this.frequency = known.shown;
    this.keep();
  }

  /** Write where one stands into the address. */
  keep(step = false): void {
    const whole = (v: number, otherwise: number) => (v === otherwise ? "" : String(v));
    put({
      run: this.run, state: this.state ?? "", tab: this.tab === "cuts" ? "" : this.tab, f: this.known ? String(this.hz / 1e9) : value("f"),
      plane: whole(this.plane, 0), basis: this.basisChosen ? this.basis : "", coords: this.coordinates === "theta-phi" ? "" : this.coordinates,
      shown: this.component === "total" ? "" : this.component, beside: this.beside.join(" "), off: this.off.join(" "),
      gate: this.gate ? this.gate.join(" ") : "", span: whole(this.span, 50),
    }, step); // prettier-ignore
  }

  body(): Opened {
    return { campaign: session.campaign, run: this.run, state: this.state, off: this.off, gate_ns: this.gate };
  }

  one(): { campaign: string; run: string; state: string | null } {
    return { campaign: session.campaign, run: this.run, state: this.state };
  }

  of(frequency: boolean): Of {
    return { run: this.run, state: this.state, frequency_hz: frequency ? this.hz : null };
  }

  /** Run and state before the bar, the rest after it: what stands before it may never be mixed. */
  subject(frequency: boolean, rest = ""): Subject {
    const state = this.state ? `, state ${this.state}` : "";
    const trial = this.tried ? ", a trial" : "";
    return {
      key: `${this.run}/${this.state ?? ""}|${frequency ? this.frequency : ""}/${this.off.join()}/${this.gate?.join() ?? ""}/${rest}`,
      words: `run ${this.run}${state}${frequency ? `, ${ghz(this.hz)}` : ""}${trial}`,
    };
  }
}

function gateOf(text: string): [number, number] | null {
  const [centre, width] = text.split(" ").map(Number);
  return text && Number.isFinite(centre) && width > 0 ? [centre, width] : null;
}
