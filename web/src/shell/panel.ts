/** One request model for every panel of the page.
 *
 * A panel is about a subject (run, state, frequency) and says so at its head. A later question overtakes an earlier one.
 * What belongs to another subject is never shown under this one's name: head and content change together. An error stays
 * until the same question goes well or another one is asked.
 */

import { fill, h, button } from "../draw/dom";
import type { Of } from "../request/types";
import { overtaken, words } from "./session";

export type Subject = { key: string; words: string };
/** What every panel's content is made of; undefined leaves the panel as it draws itself. */
export type Draw<T> = (answer: T) => (Node | null | false)[];

export class Panel {
  readonly subject = h("span", { class: "subject mono" });
  readonly body = h("div", { class: "panel-body" });
  readonly faults = h("div", { class: "faults", attrs: { role: "alert" } });
  readonly tools = h("span", { class: "row" });
  readonly element: HTMLElement;
  private asked = 0;
  private stop: AbortController | null = null;
  private key = "";

  constructor(title: string, kind = "card", level: "h2" | "h3" = "h2") {
    this.element = h(
      "section",
      { class: `${kind} panel`, attrs: { "aria-label": title } },
      h("div", { class: "panel-head" }, h(level, {}, title), this.subject, h("span", { class: "spring" }), this.tools),
      this.faults,
      this.body,
    );
  }

  /** Ask, and draw what comes; content of another run is taken away at once, a neighbour's stays until its successor is there. */
  async ask<T>(
    subject: Subject,
    question: (signal: AbortSignal) => Promise<T>,
    draw: Draw<T>,
    options: { keep?: boolean; of?: (answer: T) => Of | null; expect?: Of; waiting?: string } = {},
  ): Promise<T | undefined> {
    const mine = ++this.asked;
    this.stop?.abort();
    const stop = (this.stop = new AbortController());
    this.element.setAttribute("aria-busy", "true");
    if (!options.keep || this.key.split("|")[0] !== subject.key.split("|")[0]) this.empty("", subject);
    const timer = window.setTimeout(() => {
      if (mine === this.asked && !this.body.childElementCount)
        fill(this.body, h("p", { class: "quiet loading" }, options.waiting ?? "Being worked out."));
    }, 150);
    try {
      const answer = await question(stop.signal);
      if (mine !== this.asked) return undefined;
      const about = options.of?.(answer);
      if (about && options.expect && !agrees(about, options.expect))
        throw new Error(
          `The server answered about ${about.run}${about.state ? `, ${about.state}` : ""}, not about what was asked. Nothing is shown.`,
        );
      fill(this.faults);
      fill(this.subject, subject.words);
      this.key = subject.key;
      fill(this.body, ...draw(answer));
      return answer;
    } catch (error) {
      if (mine !== this.asked || overtaken(error)) return undefined;
      fill(this.subject, subject.words);
      this.key = subject.key;
      fill(this.body);
      fill(
        this.faults,
        h("p", {}, words(error)),
        button("ask again", () => void this.ask(subject, question, draw, options), "tiny"),
      );
      return undefined;
    } finally {
      window.clearTimeout(timer);
      if (mine === this.asked) this.element.removeAttribute("aria-busy");
    }
  }

  /** Show that there is nothing, and why. */
  empty(text: string, subject: Subject | null = null): void {
    if (!subject) {
      this.asked++;
      this.stop?.abort();
      this.element.removeAttribute("aria-busy");
    }
    fill(this.subject, subject?.words ?? "");
    this.key = subject?.key ?? "";
    fill(this.faults);
    fill(this.body, text && h("p", { class: "quiet" }, text));
  }

  /** Draw what is at hand, without a question. */
  show(subject: Subject, ...content: (Node | null | false)[]): void {
    this.asked++;
    this.stop?.abort();
    this.element.removeAttribute("aria-busy");
    fill(this.faults);
    fill(this.subject, subject.words);
    this.key = subject.key;
    fill(this.body, ...content);
  }

  /** Say a fault; it stays until the next question about this panel. */
  fault(error: unknown): void {
    if (!overtaken(error)) fill(this.faults, h("p", {}, words(error)));
  }

  leave(): void {
    this.asked++;
    this.stop?.abort();
  }
}

export function agrees(about: Of, asked: Of): boolean {
  const near =
    asked.frequency_hz === null || about.frequency_hz === null || Math.abs(about.frequency_hz - asked.frequency_hz) < 1;
  return about.run === asked.run && (about.state ?? null) === (asked.state ?? null) && near;
}
