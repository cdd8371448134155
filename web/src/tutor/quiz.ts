/** Three questions at the end, about the positioner that is shown: who watched the slices can answer them. */

import { button, fill, h } from "../draw/dom";
import type { Geometry } from "../scene/angles";

type Question = { text: string; answers: string[]; right: number; why: string };

const ROLL: Question[] = [
  {
    text: "On a roll over azimuth, azimuth sweeps and the roll stands. What does the probe pass over on the device's sphere?",
    answers: ["a circle of constant theta", "a great circle through boresight", "one point"],
    right: 1,
    why: "Each slice is a great circle through +z; the roll angle says which one.",
  },
  {
    text: "The roll stands at 90°, the probe stands still with its axis horizontal. The device radiates along x. What does the probe take in?",
    answers: ["all of the field", "half of its power", "none of it: the field is across"],
    right: 2,
    why: "The device turned by 90°, its field with it: the probe's axis and the field are at right angles. A probe that follows the roll takes in all of it.",
  },
  {
    text: "Where do the slices of a roll over azimuth crowd together?",
    answers: ["at boresight and behind the device", "at the horizon, theta 90°", "nowhere"],
    right: 0,
    why: "All great circles through +z meet there and at -z. Theta and phi turn quickly near them; Ludwig 3 does not at boresight.",
  },
];

/** Swept and stepped axis, what stays the same along a slice, and the pole's letter, of the two azimuth/elevation stacks. */
function withoutRoll(name: string, swept: string, stepped: string, pole: string): Question[] {
  return [
    {
      text: `On an ${name}, ${swept} sweeps and ${stepped} stands. What does the probe pass over on the device's sphere?`,
      answers: ["a great circle through boresight, whatever the step", `a circle of constant ${stepped}`, "one point"],
      right: 1,
      why: `Only the slice of ${stepped} 0° is a great circle; the others are smaller, parallel to it.`,
    },
    {
      text: `The device radiates along x. At boresight the probe takes in all of it. Both axes stand at 40° now, and the probe stands still. What does it take in?`,
      answers: ["all of the field", "less: the field leans before it", "none of it"],
      right: 1,
      why: "Away from both axes' zeros the field of Ludwig's third definition leans before a probe that stands still; the dial shows by how much.",
    },
    {
      text: `Where do the slices of an ${name} crowd together?`,
      answers: ["at boresight and behind the device", `towards +${pole} and -${pole}`, "nowhere"],
      right: 1,
      why: `The circles shrink towards the ends of the axis that carries them: +${pole} and -${pole}.`,
    },
  ];
}

export const QUESTIONS: Record<Geometry, Question[]> = {
  "roll-over-azimuth": ROLL,
  "azimuth-over-elevation": withoutRoll("azimuth over elevation", "azimuth", "elevation", "y"),
  "elevation-over-azimuth": withoutRoll("elevation over azimuth", "elevation", "azimuth", "x"),
};

/** A mount with joints: what sweeps and steps by its joints' names, and whether a slice keeps theta. */
export function ofMount(swept: string, stepped: string, slice: string, constantTheta: boolean): Question[] {
  return [
    {
      text: `Of this mount, ${swept} ${swept.startsWith("joints") ? "move" : "moves"}, and ${stepped} ${stepped.startsWith("joints") ? "stand" : "stands"}. What does the probe pass over on the device's sphere?`,
      answers: constantTheta
        ? [slice, "a great circle through boresight", "one point"]
        : ["a circle of constant theta", slice, "one point"],
      right: constantTheta ? 0 : 1,
      why: "The orange curve is where the joints really look, worked out from their lines.",
    },
    {
      text: "The probe stands before theta 40°, phi 90° and lies along theta. The device radiates along x. What does the probe take in?",
      answers: ["all of the field", "half of its power", "none of it: the field is across"],
      right: 2,
      why: "At phi 90° the co-polar field of Ludwig's third definition lies along phi. A probe that follows, chi = psi - phi, takes in all of it.",
    },
    {
      text: "Which frame do plans, records and figures of this mount keep?",
      answers: [
        "the joints' readouts alone",
        "theta and phi of the device, and the probe's roll",
        "azimuth and elevation",
      ],
      right: 1,
      why: "Joints are how the mount gets there; the record keeps their readouts beside theta, phi and the probe's roll.",
    },
  ];
}

export function quiz(questions: Question[], done: (right: number) => void): HTMLElement {
  const place = h("div", { class: "quiz", attrs: { "aria-live": "polite" } });
  let right = 0;
  const ask = (i: number): void => {
    const q = questions[i];
    if (!q) {
      fill(place, h("p", { class: right === questions.length ? "good" : "" }, `${right} of ${questions.length} right.`), button("once more", () => {
        right = 0;
        ask(0);
      })); // prettier-ignore
      done(right);
      return;
    }
    const told = h("p", {});
    const buttons = q.answers.map((text, k) => button(text, () => {
      if (k === q.right) right++;
      buttons.forEach((one, n) => {
        one.disabled = true;
        one.classList.toggle("right", n === q.right);
        one.classList.toggle("wrong", n === k && k !== q.right);
      });
      fill(told, `${k === q.right ? "Right. " : "No. "}${q.why} `, button(i + 1 < questions.length ? "next question" : "end", () => ask(i + 1), "main"));
    })); // prettier-ignore
    fill(
      place,
      h("p", {}, `${i + 1} of ${questions.length}: ${q.text}`),
      h("div", { class: "stacked" }, ...buttons),
      told,
    );
  };
  ask(0);
  return place;
}
