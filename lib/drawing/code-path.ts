import QRCode from "qrcode";

export type CodePath = {
  /** Modules a side, without the quiet zone. */
  readonly modules: number;
  /** An SVG path, one unit a module. */
  readonly path: string;
};

/** A QR code as one vector path: each run of dark modules is one rectangle, so that no hairline shows between two. */
export const codePath = (text: string): CodePath => {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: "M" });
  const { size } = modules;
  let path = "";
  for (let row = 0; row < size; row += 1)
    for (let column = 0; column < size; column += 1) {
      if (!modules.get(row, column)) continue;
      const start = column;
      while (column + 1 < size && modules.get(row, column + 1)) column += 1;
      const width = column - start + 1;
      path += `M${start} ${row}h${width}v1h-${width}z`;
    }
  return { modules: size, path };
};
