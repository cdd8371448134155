import { beforeEach, describe, expect, it } from "vitest";
import { numberOf, put, read, value, written } from "./address";

describe("the address", () => {
  beforeEach(() => history.replaceState(null, "", "#explore"));

  it("goes there and back", () => {
    const place = { page: "explore", values: { run: "first", f: "24.125", at: "12.5,-40" } };
    expect(read(written(place))).toEqual(place);
  });

  it("leaves out what is empty", () => {
    expect(written({ page: "plan", values: { run: "" } })).toBe("#plan");
  });

  it("keeps what is not changed", () => {
    put({ run: "a", plane: "90" });
    put({ plane: "" });
    expect(location.hash).toBe("#explore?run=a");
    expect(value("run")).toBe("a");
  });

  it("takes words for no number", () => {
    put({ plane: "east" });
    expect(numberOf("plane")).toBeNull();
    expect(numberOf("none")).toBeNull();
  });
});
