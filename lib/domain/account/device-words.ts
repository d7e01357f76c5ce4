/** Order matters: several browsers name others in their header as well. */
const browsers = [
  [/\bEdgA?\//, "Edge"],
  [/\bOPR\//, "Opera"],
  [/\bFirefox\/|\bFxiOS\//, "Firefox"],
  [/\bChrome\/|\bCriOS\//, "Chrome"],
  [/\bSafari\//, "Safari"],
] as const;
const systems = [
  [/\biPhone\b|\biPad\b/, "iOS"],
  [/\bAndroid\b/, "Android"],
  [/\bWindows\b/, "Windows"],
  [/\bMac OS X\b/, "macOS"],
  [/\bLinux\b|\bX11\b/, "Linux"],
] as const;

/** Browser and system in two words, from what the browser says of itself; for its owner's eye, never a proof. */
export const deviceWords = (userAgent: string): string => {
  const said = userAgent.slice(0, 500);
  const browser = browsers.find(([pattern]) => pattern.test(said))?.[1];
  const system = systems.find(([pattern]) => pattern.test(said))?.[1];
  if (!browser && !system) return "an unknown device";
  return `${browser ?? "another browser"} on ${system ?? "an unknown system"}`;
};
