import type { RequestedKind } from "@/lib/domain/request/schema";

export const emptyKind: Required<RequestedKind> = {
  typeLetter: "K",
  construction: "",
  protection: "metal-sheath",
  quantity: "1",
  temperatureUnit: "C",
  setpoints: "",
  useFrom: "",
  useTo: "",
  tolerance: "none",
  ownLimit: "",
  groupName: "",
};

export const kindFields = Object.keys(emptyKind) as readonly (keyof RequestedKind)[];
