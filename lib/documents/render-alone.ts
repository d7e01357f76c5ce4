import { type DocumentProps, renderToBuffer } from "@react-pdf/renderer";
import type { ReactElement } from "react";
import { registerAnew } from "./fonts";

let last: Promise<unknown> = Promise.resolve();

/** One after the other, whatever became of the one before. */
export const alone = <T>(work: () => Promise<T>): Promise<T> => {
  const mine = last.then(work, work);
  last = mine;
  return mine;
};

/**
 * Bytes of one document. The font objects keep what earlier documents did with them, and a later one would be set by a
 * hair otherwise: so fonts are read anew for each, and no two are set at once. The same content gives the same bytes,
 * whichever was made before it.
 */
export const renderAlone = (document: ReactElement<DocumentProps>): Promise<Uint8Array<ArrayBuffer>> =>
  alone(async () => {
    registerAnew();
    return Uint8Array.from(await renderToBuffer(document));
  });
