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
  runs: RunRow[];
}

export interface RunRow {
  name: string;
  kind: "sphere" | "cuts" | "power" | "begun";
  state: "begun" | "stopped" | "complete" | "damaged" | "nothing";
  measured: number;
  total: number;
  measured_at: number | null;
  identity: Record<string, string>;
  record: boolean;
  figures: boolean;
  report: boolean;
}

export interface FormAnswer {
  name: string;
  device: string;
  chamber: string;
  simulated: boolean;
  fields: Field[];
  bands: BandForm;
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
  help: string;
  optional: boolean;
  whole: boolean;
}

export interface BandForm {
  rows: (Record<string, unknown>)[];
  columns: Field[];
  listed: string;
  help: string;
}

export interface Status {
  type: "status";
  campaign: string;
  run: string;
  kind: string;
  state: string;
  text: string;
  running: boolean;
  moves: boolean;
  measured: number;
  total: number;
  left_s: number;
  predicted_s: number;
  axes: string[];
  position_deg: number[];
  angles_deg: number[];
  joints: number[];
  level_db: number | null;
  strongest_db: number | null;
  noise_db: number;
  slice: number;
  ties: number[][];
  words: Word[];
  version: number;
  sequence?: number;
  lease?: string;
  hand?: Hand | null;
  jobs?: number;
}

export interface Word {
  at: number;
  kind: string;
  text: string;
}

export interface Hand {
  campaign: string;
  text: string;
  began: number;
}

export interface Idle {
  type: "status";
  state: "idle";
  running: false;
  sequence?: number;
  lease?: string;
  hand?: Hand | null;
  jobs?: number;
}

export interface JobState {
  id: string;
  name: string;
  words: string;
  by: string;
  mine: boolean;
  state: "waiting" | "at work" | "done" | "failed" | "given up";
  place: number;
  for_s: number;
  usual_s: number | null;
  faults: string[];
}

export interface JobAnswer {
  state: JobState;
  result: unknown;
}

export interface Checked {
  at: number;
  lines: InstrumentLine[];
}

export interface InstrumentLine {
  what: string;
  good: boolean;
  found: string;
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
  forecast: ForecastRow[];
  verdict: string;
  duration: string;
  points: number;
  hash: string;
  split: ([string, number])[];
  alternatives: Alternative[];
}

export interface ForecastRow {
  name: string;
  label: string;
  unit: string;
  expanded: number;
  text: string;
  wanted: number | null;
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
  edits?: Record<string, number | string | boolean | null | number[] | (Record<string, number | number[] | null>)[]>;
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
  of: Of;
  other: string;
  total: (number | null)[];
  rotation_deg: number[];
  shift_mm: number[];
  level_db: number;
  difference_db: number;
}

export interface Of {
  run: string;
  state: string | null;
  frequency_hz: number | null;
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
  limits_deg: number[][];
  limits_words: string[];
  mount: Mount | null;
}

export interface Mount {
  joints: JointLine[];
  solids: MountSolid[];
  up: number[];
  values: number[];
  slice_index: number[];
  pass_index: number[];
}

export interface JointLine {
  name: string;
  carries: "device" | "probe";
  kind: "revolute" | "prismatic";
  axis: number[];
  point_m: number[];
  least: number;
  most: number;
  unit: string;
  rolls: boolean;
}

export interface MountSolid {
  name: string;
  body: number;
  shape: "capsule" | "box";
  a_m: number[];
  b_m: number[];
  radius_m: number;
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
  mount: MountPose | null;
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

export interface MountPose {
  values: number[];
  fault: string;
}

export interface Direction {
  campaign?: string | null;
  theta_deg: number;
  phi_deg: number;
  slant_deg?: number;
}

export interface JobName {
  job: string;
}

export interface Rehearse {
  campaign: string;
  edits?: Record<string, number | string | boolean | null | number[] | (Record<string, number | number[] | null>)[]>;
  seed?: number;
}

export interface CampaignRequest {
  campaign: string;
}

export interface GiveUp {
  job: string;
}

export interface Before {
  run: string;
  kind: string;
  again: string;
  points: number;
  to_measure: number;
  duration_s: number;
  cautions: string[];
  on_disk: Held;
  fault: string;
  failed_checks: string[];
  free_name: string;
  simulated: boolean;
}

export interface Held {
  state: "nothing" | "begun" | "stopped" | "complete" | "damaged";
  measured: number;
  total: number;
  measured_at: number | null;
}

export interface Beginning {
  campaign: string;
  run: string;
  kind?: "scan" | "flip" | "beam-coarse" | "beam-fine";
  again?: string;
}

export interface ByHand {
  at: number;
  text: string;
  axes: Limits[];
  pose: Pose | null;
  sweep: SweepMessage | null;
}

export interface Limits {
  axis: string;
  unit: string;
  readout_deg: number;
  min_deg: number;
  max_deg: number;
  home_deg: number;
  speed_deg_s: number;
}

export interface Pose {
  axes: string[];
  angles_deg: number[];
  joints: number[];
}

export interface SweepMessage {
  frequency_hz: number[];
  level_db: number[][];
  time_ns: number[];
  impulse_db: number[];
}

export interface MoveRequest {
  campaign: string;
  to_deg: Record<string, number>;
  speed_deg_s?: number | null;
  clear: true;
}

export interface PointAt {
  campaign: string;
  theta_deg: number;
  phi_deg: number;
  speed_deg_s?: number | null;
  clear: true;
}

export interface HomeOf {
  campaign: string;
  seek?: boolean;
  speed_deg_s?: number | null;
  clear: true;
}

export interface SetHome {
  campaign: string;
  home_deg: Record<string, number>;
}

export interface SetZero {
  campaign: string;
  zero_deg: Record<string, number>;
}

export interface Said {
  campaign: string;
  run: string;
  said: Record<string, string>;
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
  despite_check?: boolean;
  again?: string;
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

export interface Thumb {
  run: string;
  what: "pattern" | "as read" | "cut" | "";
  shades: number[];
}

export interface OneRun {
  campaign: string;
  run: string;
  state?: string | null;
}

export interface AsRead {
  of: Of;
  directions: number[];
  level_db: number[];
  measured: number;
  total: number;
  state: string | null;
}

export interface Spectrum {
  of: Of;
  theta_deg: number;
  phi_deg: number;
  frequency_hz: number[];
  first: (number | null)[];
  second: (number | null)[];
  total: (number | null)[];
  names: string[];
}

export interface Spectral {
  campaign: string;
  run: string;
  state?: string | null;
  off?: string[];
  gate_ns?: [number, number] | null;
  theta_deg: number;
  phi_deg: number;
  basis?: "theta-phi" | "ludwig-2-az-over-el" | "ludwig-2-el-over-az" | "ludwig-3" | "circular";
}

export interface VerdictsAnswer {
  of: Of;
  specification: string;
  document: string;
  decision: string;
  outcome: string;
  current: boolean;
  rows: VerdictRow[];
}

export interface VerdictRow {
  requirement: string;
  outcome: string;
  text: string;
  margin: number | null;
  unit: string;
  needed: number | null;
}

export interface Overview {
  of: Of;
  unit: string;
  states: string[];
  frequency_hz: number[];
  shown: number;
  basis: "ludwig-3" | "circular";
  steps: StepRow[];
  region_deg: number;
  slant_deg: number;
  figures: FigureRow[];
  demo: boolean;
  specification: boolean;
  report: boolean;
  edited: string[];
}

export interface StepRow {
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
  of: Of;
  why: string;
  singular: string;
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
  peak: number[];
  tangent: number[];
}

export interface CutRequest {
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
  of: Of;
  rows: number[];
  columns: number[];
  row_name: string;
  column_name: string;
  formula: string;
  names: string[];
  first: (number | null)[];
  second: (number | null)[];
  total: (number | null)[];
}

export interface LevelsRequest {
  campaign: string;
  run: string;
  state?: string | null;
  off?: string[];
  gate_ns?: [number, number] | null;
  frequency?: number;
  coordinates?: "theta-phi" | "az-el" | "alpha-epsilon" | "u-v";
  basis?: "theta-phi" | "ludwig-2-az-over-el" | "ludwig-2-el-over-az" | "ludwig-3" | "circular";
}

export interface Masks {
  of: Of;
  masks: MaskLevel[];
}

export interface MaskLevel {
  name: string;
  component: string;
  level: (number | null)[];
}

export interface Impulse {
  of: Of;
  widths_ns: number[];
  strongest_ns: number;
  time_ns: number[];
  level_db: number[];
}

export interface Findings {
  of: Of;
  rows: FindingRow[];
}

export interface FindingRow {
  topic: string;
  level_db: number;
  text: string;
}

export interface Aperture {
  of: Of;
  face: FaceAnswer | null;
}

export interface FaceAnswer {
  x_mm: number[];
  y_mm: number[];
  level_db: number[];
  phase_deg: number[];
  elements: number[][];
  excitation_db: number[];
  suspects: string[];
}

export interface CutsRun {
  of: Of;
  states: string[];
  all_hz: number[];
  components: [string, string];
  cuts: CutOfRun[];
  figures: FigureRow[];
}

export interface CutOfRun {
  name: string;
  label: string;
  angle_name: string;
  unit: string;
  angle_deg: number[];
  directions: number[];
  co: (number | null)[];
  cross: (number | null)[];
  lower: (number | null)[];
  upper: (number | null)[];
}

export interface CutsOf {
  campaign: string;
  run: string;
  state?: string | null;
  frequency?: number | null;
}

export interface PowerView {
  of: Of;
  states: string[];
  all_hz: number[];
  unit: string;
  rows: number[];
  columns: number[];
  total: (number | null)[];
  figures: FigureRow[];
}

export interface Series {
  runs: string[];
  golden: string;
  frequency_hz: number | null;
  rows: SeriesLine[];
}

export interface SeriesLine {
  label: string;
  unit: string;
  values: number[];
  mean: number;
  spread: number;
  trend: number | null;
  trend_expanded: number | null;
  e_n: (number | null)[];
}

export interface Many {
  campaign: string;
  runs: string[];
  golden: string;
  state?: string | null;
}

export interface Comparing {
  campaign: string;
  run: string;
  state?: string | null;
  other: string;
  matched?: ("frame" | "origin" | "level")[];
}

export interface SetUpsRequest {
  campaign: string;
  run: string;
  state?: string | null;
  other_campaign: string;
  other: string;
}

export interface FlipWords {
  run: string;
  measured_at: number;
  numbers: FlipNumbers;
  sentences: string[];
}

export interface FlipNumbers {
  theta_zero_deg: number;
  theta_zero_expanded_deg: number;
  theta_zero_declared_deg: number;
  axes_offset_mm: number;
  axes_offset_expanded_mm: number;
  axes_offset_declared_mm: number;
}

export interface BeamWords {
  run: string;
  beam_deg: [number, number] | null;
  maps: BeamMap[];
  readouts_deg: Record<string, number>;
  sentences: string[];
}

export interface BeamMap {
  stage: string;
  azimuth_deg: number[];
  elevation_deg: number[];
  level_db: (number | null)[];
}

export interface BeamKept {
  campaign: string;
  run: string;
  state?: string | null;
  into?: "home" | "zeros";
}

export interface RehearsalAnswer {
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

export interface Effects {
  of: Of;
  labels: Record<string, string>;
  whole: Record<string, number | null>;
  without: Record<string, Record<string, number | null>>;
}

export interface Coverage {
  frequency_hz: number;
  percent: number[];
  unit: string;
  expanded_db: number;
  rows: CoverageLine[];
}

export interface CoverageLine {
  state: string;
  levels: number[];
  peak: number | null;
}

export interface Comparison {
  matched: string[];
  middle_hz: number | null;
  rotation_deg: number[];
  shift_mm: number[];
  level_db: number | null;
  difference_db: number | null;
  rows: Change[];
  agrees: boolean;
}

export interface Change {
  label: string;
  unit: string;
  frequency_hz: number;
  value: number | null;
  expanded: number | null;
  other: number | null;
  other_expanded: number | null;
  change: number | null;
  change_expanded: number | null;
  agrees: boolean;
  reason: string;
}

export interface SetUpsWords {
  sentences: string[];
}

export interface Grid {
  type: "grid";
  rows: number[];
  columns: number[];
  row_name: string;
  column_name: string;
  directions: number[];
  state: string | null;
}

export interface Alive {
  type: "alive";
}

/** What is read, by path. */
export interface Reads {
  "/api/me": { body: undefined; answer: Me };
  "/api/campaigns": { body: undefined; answer: CampaignRuns[] };
  "/api/form/{campaign}": { body: undefined; answer: FormAnswer };
  "/api/scan": { body: undefined; answer: Status | Idle };
  "/api/jobs": { body: undefined; answer: JobState[] };
  "/api/job/{job}": { body: undefined; answer: JobAnswer };
  "/api/checked/{campaign}": { body: undefined; answer: Checked };
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
  "/api/check": { body: CampaignRequest; answer: Checked };
  "/api/cancel": { body: GiveUp; answer: JobState };
  "/api/before": { body: Beginning; answer: Before };
  "/api/where": { body: CampaignRequest; answer: ByHand };
  "/api/sweep": { body: CampaignRequest; answer: ByHand };
  "/api/move": { body: MoveRequest; answer: ByHand };
  "/api/point": { body: PointAt; answer: ByHand };
  "/api/rest": { body: HomeOf; answer: ByHand };
  "/api/set-rest": { body: SetHome; answer: Written };
  "/api/set-zero": { body: SetZero; answer: Written };
  "/api/identity": { body: Said; answer: Record<string, string> };
  "/api/start": { body: Start; answer: Sequence };
  "/api/pause": { body: Command; answer: Sequence };
  "/api/resume": { body: Command; answer: Sequence };
  "/api/abort": { body: Nothing; answer: Stopping };
  "/api/stop": { body: Nothing; answer: Stopping };
  "/api/thumb": { body: OneRun; answer: Thumb };
  "/api/as-read": { body: OneRun; answer: AsRead };
  "/api/spectrum": { body: Spectral; answer: Spectrum };
  "/api/verdicts": { body: OneRun; answer: VerdictsAnswer | null };
  "/api/judge": { body: OneRun; answer: JobName };
  "/api/overview": { body: Opened; answer: Overview };
  "/api/cut": { body: CutRequest; answer: CutAnswer };
  "/api/map": { body: LevelsRequest; answer: FieldMap };
  "/api/masks": { body: CutRequest; answer: Masks };
  "/api/impulse": { body: OneRun; answer: Impulse };
  "/api/findings": { body: OneRun; answer: Findings };
  "/api/aperture": { body: CutRequest; answer: Aperture };
  "/api/cuts": { body: CutsOf; answer: CutsRun };
  "/api/power": { body: CutsOf; answer: PowerView };
  "/api/series": { body: Many; answer: Series };
  "/api/coverage": { body: OneRun; answer: JobName };
  "/api/compare": { body: Comparing; answer: JobName };
  "/api/two-set-ups": { body: SetUpsRequest; answer: JobName };
  "/api/flip": { body: OneRun; answer: FlipWords };
  "/api/beam": { body: OneRun; answer: BeamWords };
  "/api/home": { body: BeamKept; answer: string[] };
  "/api/effects": { body: OneRun; answer: JobName };
  "/api/evaluate": { body: OneRun; answer: JobName };
  "/api/report": { body: OneRun; answer: JobName };
}

/** What slow work ends with, by the path that begins it. */
export interface Results {
  "/api/rehearse": RehearsalAnswer;
  "/api/effects": Effects;
  "/api/evaluate": number;
  "/api/report": string[];
  "/api/judge": VerdictsAnswer | null;
  "/api/coverage": Coverage;
  "/api/compare": Comparison;
  "/api/two-set-ups": SetUpsWords;
}

export type LiveMessage = Status | Idle | Grid | Alive;
