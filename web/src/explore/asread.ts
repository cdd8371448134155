/** A run that holds no pattern yet, such as one that was stopped: its levels as they were read, on the scene's sphere. */

import { fill, h } from "../draw/dom";
import { post } from "../request/server";
import type { AsRead } from "../request/types";
import { distinct } from "../scene/angles";
import { cursor } from "../shell/cursor";
import type { View } from "../shell/page";
import { session } from "../shell/session";
import { ghz } from "./state";

/** Draw what was read of a run; `still` tells whether it is still the one that is looked at. */
export async function showAsRead(view: View, run: string, place: HTMLElement, still: () => boolean): Promise<void> {
  let found: AsRead;
  try {
    found = await post("/api/as-read", { campaign: session.campaign, run });
  } catch {
    return; // The panel of the run says what is wrong with it.
  }
  if (!still() || found.of.run !== run) return;
  const { sphere, stage } = view,
    d = found.directions,
    top = Math.ceil(found.level_db.reduce((a, b) => Math.max(a, b), -300) / 5) * 5,
    scale = { low: top - 50, high: top, unit: "dB" },
    state = found.state ? `, state ${found.state}` : "",
    count = distinct(d).length;
  sphere.shape({ rows: 1, columns: d.length / 3, closed: false, directions: d });
  sphere.dots(found.level_db, scale);
  sphere.scaleBar(scale, "S21");
  fill(
    stage.caption,
    `Run ${run}${state}, ${ghz(found.of.frequency_hz ?? 0)}: ${count} directions as they were read, uncorrected.`,
  );
  stage.hovered = (at) => {
    cursor.hover(at);
    fill(stage.readout, at ? sphere.told(at, 4, (i) => `${found.level_db[i].toFixed(2)} dB`) : "");
  };
  fill(
    place,
    h(
      "p",
      { class: "small" },
      `${found.measured} of ${found.total} points were read${found.measured < found.total ? "; Scan goes on with the rest under this name" : ""}. `,
      "The sphere shows their levels as read (S21), both polarizations together, uncorrected: no figure follows from them.",
    ),
  );
}
