"use client";
/** Of the browser's own detector, where it has one (Shape Detection API). */
type Detector = {
  readonly detect: (source: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]>;
};
type DetectorClass = {
  new (options: { readonly formats: readonly string[] }): Detector;
  getSupportedFormats: () => Promise<readonly string[]>;
};

export type CodeReader = (video: HTMLVideoElement) => Promise<string | null>;

const ownDetector = async (): Promise<CodeReader | null> => {
  const own = (globalThis as { readonly BarcodeDetector?: DetectorClass }).BarcodeDetector;
  if (!own || !(await own.getSupportedFormats()).includes("qr_code")) return null;
  const detector = new own({ formats: ["qr_code"] });
  return async (video) => (await detector.detect(video))[0]?.rawValue ?? null;
};

/** Picture by picture on a canvas, for browsers without a detector; fetched only then. */
const drawnReader = async (): Promise<CodeReader> => {
  const { default: jsQR } = await import("jsqr");
  const canvas = document.createElement("canvas");
  const context = canvas.getContext("2d", { willReadFrequently: true });
  return async (video) => {
    const { videoWidth: width, videoHeight: height } = video;
    if (!context || width === 0) return null;
    canvas.width = width;
    canvas.height = height;
    context.drawImage(video, 0, 0, width, height);
    return jsQR(context.getImageData(0, 0, width, height).data, width, height)?.data || null;
  };
};

export const codeReader = async (): Promise<CodeReader> => (await ownDetector()) ?? drawnReader();
