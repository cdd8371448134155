/** Three questions at the end: who watched the slices can answer them. */

import { button, fill, h } from "../draw/dom";

type Question = { text: string; answers: string[]; right: number; why: string };

export const QUESTIONS: Question[] = [
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

export function quiz(done: (right: number) => void): HTMLElement {
  const place = h("div", { class: "quiz", attrs: { "aria-live": "polite" } });
  let right = 0;
  const ask = (i: number): void => {
    const q = QUESTIONS[i];
    if (!q) {
      fill(place, h("p", { class: right === QUESTIONS.length ? "good" : "" }, `${right} of ${QUESTIONS.length} right.`), button("once more", () => {
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
      fill(told, `${k === q.right ? "Right. " : "No. "}${q.why} `, button(i + 1 < QUESTIONS.length ? "next question" : "end", () => ask(i + 1), "main"));
    })); // prettier-ignore
    fill(
      place,
      h("p", {}, `${i + 1} of ${QUESTIONS.length}: ${q.text}`),
      h("div", { class: "stacked" }, ...buttons),
      told,
    );
  };
  ask(0);
  return place;
}
