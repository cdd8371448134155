/** Made by web/make_types.py from the server's models. Do not edit: change the models and run it again. */

export interface Me {
  name: string;
  role: "nobody" | "view" | "operate" | "configure";
  token: string;
  lease: string | null;
  mine: boolean;
  sequence: number;
  campaigns: CampaignName[];
}

export interface CampaignName {
  id: string;
  folder: string;
}

export interface CampaignRuns {
  id: string;
  folder: string;
  runs: Run[];
}

export interface Run {
  name: string;
  changed: number;
  record: boolean;
  figures: boolean;
  report: boolean;
  thumb: number[] | null;
}

export interface FormAnswer {
  name: string;
  device: string;
  chamber: string;
  simulated: boolean;
  fields: Field[];
}

export interface Field {
  group: string;
  key: string;
  label: string;
  value: unknown;
  unit: string;
  least: number | null;
  most: number | null;
  choices: string[];
  optional: boolean;
  whole: boolean;
}

export interface Status {
  type: "status";
  campaign: string;
  run: string;
  kind: string;
  state: string;
  text: string;
  running: boolean;
  measured: number;
  total: number;
  left_s: number;
  predicted_s: number;
  axes: string[];
  position_deg: number[];
  angles_deg: number[];
  level_db: number | null;
  strongest_db: number | null;
  noise_db: number;
  slice: number;
  ties: number[][];
  words: Word[];
  version: number;
  sequence?: number;
  lease?: string;
}

export interface Word {
  at: number;
  kind: string;
  text: string;
}

export interface Idle {
  type: "status";
  state: "idle";
  running: false;
  sequence?: number;
  lease?: string;
}

export interface Code {
  code: string;
}

export interface Invite {
  role: "view" | "operate" | "configure";
}

export interface Hold {
  hold: boolean;
}

export interface PlanAnswer {
  rows: ([string, string])[];
  missing: string[];
  forecast: Forecast[];
  verdict: string;
  duration: string;
  points: number;
  hash: string;
  split: ([string, number])[];
  alternatives: Alternative[];
}

export interface Forecast {
  name: string;
  expanded: number;
  cause: string;
}

export interface Alternative {
  name: string;
  why: string;
  duration: string;
  points: number;
  choices: unknown;
}

export interface Form {
  campaign: string;
  edits?: Record<string, number | string | boolean | null | number[]>;
}

export interface Scheme {
  geometry: string;
  scheme: string;
  points: number;
  pole: string;
  fault: string;
  duration: string;
  polarization: string;
  suits: string;
  formula: string;
}

export interface Difference {
  total: (number | null)[];
  rotation_deg: number[];
  shift_mm: number[];
  level_db: number;
  difference_db: number;
}

export interface Pair {
  campaign: string;
  run: string;
  state?: string | null;
  off?: string[];
  gate_ns?: [number, number] | null;
  frequency?: number;
  plane_deg?: number;
  basis?: "theta-phi" | "ludwig-2-az-over-el" | "ludwig-2-el-over-az" | "ludwig-3" | "circular";
  other: string;
}

export interface Motion {
  geometry: string;
  formula: string;
  axes: string[];
  angles_deg: number[];
  readouts_deg: number[];
  role: number[];
  cell: number[];
  time_s: number[];
  directions: number[];
  range_m: number;
  size_mm: number[];
  offset_mm: number[];
  slant_deg: number;
  reach_m: number;
  ports: number;
}

export interface Written {
  written: string[];
}

export interface Lesson {
  direction: number[];
  theta: number;
  phi: number;
  azimuth: number;
  elevation: number;
  alpha: number;
  epsilon: number;
  bases: PolarizationBasis[];
  positioners: Stand[];
}

export interface PolarizationBasis {
  name: string;
  formula: string;
  components: string[];
  first: number[];
  second: number[];
}

export interface Stand {
  name: string;
  formula: string;
  axes: string[];
  pole: string;
  ways: Way[];
}

export interface Way {
  readouts: Record<string, number>;
  slant_fixed: number;
  probe_roll: number;
  fixed: number[];
  following: number[];
}

export interface Direction {
  theta_deg: number;
  phi_deg: number;
  slant_deg?: number;
}

export interface JobName {
  job: string;
}

export interface Rehearse {
  campaign: string;
  edits?: Record<string, number | string | boolean | null | number[]>;
  seed?: number;
}

export interface OneRun {
  campaign: string;
  run: string;
  state?: string | null;
}

export interface Sequence {
  sequence: number;
}

export interface Start {
  campaign: string;
  run: string;
  sequence: number;
  cautions_read: true;
  kind?: "scan" | "flip" | "beam-coarse" | "beam-fine";
  home?: boolean;
}

export interface Command {
  run: string;
  sequence: number;
}

export interface Stopping {
  stopping: boolean;
  sequence: number;
}

export interface Nothing {

}

export interface Overview {
  run: string;
  state: string | null;
  states: string[];
  frequency_hz: number[];
  steps: Step[];
  region_deg: number;
  slant_deg: number;
  figures: FigureRow[];
  demo: boolean;
  specification: boolean;
  report: boolean;
}

export interface Step {
  name: string;
  on: boolean;
  may_change: boolean;
}

export interface FigureRow {
  name: string;
  label: string;
  unit: string;
  frequency_hz: number;
  value: number | null;
  lower: number | null;
  upper: number | null;
  definition: string;
  text: string;
}

export interface Opened {
  campaign: string;
  run: string;
  state?: string | null;
  off?: string[];
  gate_ns?: [number, number] | null;
}

export interface CutAnswer {
  angle_deg: number[];
  first: (number | null)[];
  second: (number | null)[];
  total: (number | null)[];
  names: string[];
  peak_dbi: number;
  beamwidth_deg: number | null;
  edges_deg: (number | null)[];
  side_lobe_db: number | null;
  null_db: number | null;
  peak_theta_deg: number;
  peak_phi_deg: number;
}

export interface Cut {
  campaign: string;
  run: string;
  state?: string | null;
  off?: string[];
  gate_ns?: [number, number] | null;
  frequency?: number;
  plane_deg?: number;
  basis?: "theta-phi" | "ludwig-2-az-over-el" | "ludwig-2-el-over-az" | "ludwig-3" | "circular";
}

export interface FieldMap {
  rows: number[];
  columns: number[];
  row_name: string;
  column_name: string;
  formula: string;
  names: string[];
  level: (number | null)[];
}

export interface Levels {
  campaign: string;
  run: string;
  state?: string | null;
  off?: string[];
  gate_ns?: [number, number] | null;
  frequency?: number;
  coordinates?: "theta-phi" | "az-el" | "alpha-epsilon" | "u-v";
  basis?: "theta-phi" | "ludwig-2-az-over-el" | "ludwig-2-el-over-az" | "ludwig-3" | "circular";
  component?: "first" | "second" | "total";
}

export interface MaskLevel {
  name: string;
  component: string;
  level: (number | null)[];
}

export interface Impulse {
  widths_ns: number[];
  strongest_ns: number;
  time_ns: number[];
  level_db: number[];
}

export interface FindingRow {
  topic: string;
  level_db: number;
  text: string;
}

export interface Face {
  x_mm: number[];
  y_mm: number[];
  level_db: number[];
  phase_deg: number[];
  elements: number[][];
  excitation_db: number[];
  suspects: string[];
}

export interface FlipWords {
  numbers: FlipNumbers;
  sentences: string[];
}

export interface FlipNumbers {
  theta_zero_deg: number;
  theta_zero_expanded_deg: number;
  axes_offset_mm: number;
  axes_offset_expanded_mm: number;
}

export interface BeamWords {
  numbers: Record<string, unknown>;
  readouts_deg: Record<string, number>;
  sentences: string[];
}

export interface Rehearsal {
  rows: RehearsedFigure[];
  share_inside: number;
  seconds: number;
  theta: number[];
  phi: number[];
  error_db: number[];
}

export interface RehearsedFigure {
  name: string;
  unit: string;
  value: string;
  truth: number;
  inside: boolean;
  cause: string;
}

export interface InstrumentLine {
  what: string;
  good: boolean;
  found: string;
}

export interface Effects {
  labels: Record<string, string>;
  whole: Record<string, number | null>;
  without: Record<string, Record<string, number | null>>;
}

export interface Grid {
  type: "grid";
  rows: number[];
  columns: number[];
  row_name: string;
  column_name: string;
  directions: number[];
}

/** What is read, by path. */
export interface Reads {
  "/api/me": { body: undefined; answer: Me };
  "/api/campaigns": { body: undefined; answer: CampaignRuns[] };
  "/api/form/{campaign}": { body: undefined; answer: FormAnswer };
  "/api/cautions/{campaign}": { body: undefined; answer: string[] };
  "/api/scan": { body: undefined; answer: Status | Idle };
  "/api/job/{job}": { body: undefined; answer: unknown };
}

/** What is asked with a body, by path. */
export interface Asks {
  "/api/invite": { body: Invite; answer: Code };
  "/api/lease": { body: Hold; answer: Me };
  "/api/plan": { body: Form; answer: PlanAnswer };
  "/api/schemes": { body: Form; answer: Scheme[] };
  "/api/difference": { body: Pair; answer: Difference };
  "/api/motion": { body: Form; answer: Motion };
  "/api/save": { body: Form; answer: Written };
  "/api/tutor": { body: Direction; answer: Lesson };
  "/api/rehearse": { body: Rehearse; answer: JobName };
  "/api/check": { body: OneRun; answer: JobName };
  "/api/start": { body: Start; answer: Sequence };
  "/api/pause": { body: Command; answer: Sequence };
  "/api/resume": { body: Command; answer: Sequence };
  "/api/stop": { body: Nothing; answer: Stopping };
  "/api/overview": { body: Opened; answer: Overview };
  "/api/cut": { body: Cut; answer: CutAnswer };
  "/api/map": { body: Levels; answer: FieldMap };
  "/api/masks": { body: Cut; answer: MaskLevel[] };
  "/api/impulse": { body: OneRun; answer: Impulse };
  "/api/findings": { body: OneRun; answer: FindingRow[] };
  "/api/aperture": { body: Cut; answer: Face | null };
  "/api/flip": { body: OneRun; answer: FlipWords };
  "/api/beam": { body: OneRun; answer: BeamWords };
  "/api/home": { body: OneRun; answer: string[] };
  "/api/effects": { body: OneRun; answer: JobName };
  "/api/evaluate": { body: OneRun; answer: JobName };
  "/api/report": { body: OneRun; answer: JobName };
}

/** What slow work ends with, by the path that begins it. */
export interface Results {
  "/api/rehearse": Rehearsal;
  "/api/check": InstrumentLine[];
  "/api/effects": Effects;
  "/api/evaluate": number;
  "/api/report": string[];
}

export type LiveMessage = Status | Idle | Grid;
