import { describe, expect, it } from "vitest";
import { wayBack, wayThere } from "@/app/(public)/sign-in/way-back";

const own = "https://calibration.example";

describe("the first visit of the sign-in page", () => {
  it("keeps what it was to say, and where the person wanted to go", () => {
    expect(wayBack(own + wayThere("/orders?state=open", "invited"), own)).toEqual({
      to: "/orders?state=open",
      said: "invited",
    });
    expect(wayThere("/orders", undefined)).toBe("/orders");
  });

  it("takes nothing from another address", () => {
    for (const way of ["https://elsewhere.example/sign-in?said=invited", "/orders", undefined])
      expect(wayBack(way, own)).toEqual({ to: way, said: undefined });
  });
});
