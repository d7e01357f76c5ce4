import { Image, Text, View } from "@react-pdf/renderer";
import { styles } from "./styles";

export type Mark = { readonly data: Buffer; readonly format: "png" | "jpg" };

/** As the body gave it: its proportions kept, its number beneath. At the top right, beside the title. */
export const AccreditationMark = ({ mark, number }: { readonly mark: Mark; readonly number: string }) => (
  <View style={{ position: "absolute", top: 88, right: 46, width: 96, alignItems: "flex-end" }}>
    <Image src={mark} style={{ maxWidth: 96, height: 44, objectFit: "contain" }} />
    {number === "" ? null : <Text style={styles.small}>{number}</Text>}
  </View>
);
