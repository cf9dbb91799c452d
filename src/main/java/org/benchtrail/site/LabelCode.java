package org.benchtrail.site;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import io.quarkus.qute.RawString;
import java.util.Map;

/**
 * A QR code as an SVG picture: dark on light whatever the page's colours, four modules of margin, an error correction that still reads
 * with a quarter of it dirty (level Q of ISO/IEC 18004).
 */
final class LabelCode {
    private static final int MARGIN = 4;

    private LabelCode() {}

    /** @param address printable ASCII, so that nothing in it needs an encoding */
    static RawString draw(String address) {
        ByteMatrix modules = modules(address);
        int size = modules.getWidth() + 2 * MARGIN;
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                if (modules.get(x, y) == 1) {
                    path.append("M" + (x + MARGIN) + " " + (y + MARGIN) + "h1v1h-1z");
                }
            }
        }
        return new RawString(
                "<svg class=\"code\" role=\"img\" aria-label=\"QR code with the address of the device\" viewBox=\"0 0 "
                        + size + " " + size + "\" shape-rendering=\"crispEdges\"><path fill=\"white\" d=\"M0 0h" + size
                        + "v" + size
                        + "h-" + size + "z\"/><path fill=\"black\" d=\"" + path + "\"/></svg>");
    }

    private static ByteMatrix modules(String address) {
        try {
            return Encoder.encode(address, ErrorCorrectionLevel.Q, Map.of(EncodeHintType.CHARACTER_SET, "ISO-8859-1"))
                    .getMatrix();
        } catch (WriterException e) {
            throw new IllegalArgumentException("too long for a QR code: " + address, e);
        }
    }
}
