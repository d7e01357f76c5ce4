/** An ink of this share on white paper as a solid colour: what is archived as PDF/A here has no transparency. */
export const mixedInk = (ink: string, share: number): string => {
  const channels = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(ink)?.slice(1);
  if (!channels) throw new Error(`${ink} is no ink of the form #rrggbb`);
  const mixed = channels.map((channel) => Math.round(255 - (255 - Number.parseInt(channel, 16)) * share));
  return `#${mixed.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
};
