/** What an address says that the page does not know: said in plain words, never passed over. */

import type { Place } from "./address";

/** Everything that some page reads from its address. */
const KEYS = ["c", "run", "state", "tab", "f", "plane", "basis", "coords", "shown", "beside", "off", "gate", "span", "polar", "at", "stand"]; // prettier-ignore
const NUMBERS = ["f", "plane", "span"];

export type Known = { pages: string[]; campaigns: string[]; choices: Record<string, string[]> };

/** One sentence for each part of an address that is ignored. */
export function remarks(place: Place, known: Known): string[] {
  const said: string[] = [],
    { values } = place;
  if (place.page && !known.pages.includes(place.page))
    said.push(`There is no page "${place.page}"; ${known.pages[0]} is shown.`);
  if (values["c"] && !known.campaigns.includes(values["c"]))
    said.push(`This control room has no campaign "${values["c"]}"; another is shown.`);
  for (const key of Object.keys(values).filter((one) => !KEYS.includes(one)))
    said.push(`The address says "${key}", which no page knows; it is ignored.`);
  for (const key of NUMBERS)
    if (values[key] && !Number.isFinite(Number(values[key])))
      said.push(`The address says ${key} = "${values[key]}", which is no number; it is ignored.`);
  for (const [key, all] of Object.entries(known.choices))
    if (values[key] && !all.includes(values[key]))
      said.push(`The address says ${key} = "${values[key]}", which is none of ${all.join(", ")}; it is ignored.`);
  return said;
}
