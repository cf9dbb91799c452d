package org.benchtrail.platform.paper;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import io.quarkus.qute.RawString;
import java.util.Map;

/** A QR code (ISO/IEC 18004) as an SVG picture: dark on light whatever the page's colours, four modules of margin. */
public final class SquareCode {
    private static final int MARGIN = 4;

    private SquareCode() {}

    /**
     * A short text that still reads with a quarter of the code dirty (level Q).
     *
     * @param ascii printable ASCII, so that nothing in it needs an encoding
     * @param label what the code holds, for those who do not see it
     */
    public static RawString tough(String ascii, String label) {
        return draw(ascii, label, ErrorCorrectionLevel.Q, "ISO-8859-1");
    }

    /** A text in UTF-8 that still reads with a tenth and more of the code dirty (level M): fewer modules, which print larger. */
    public static RawString dense(String text, String label) {
        return draw(text, label, ErrorCorrectionLevel.M, "UTF-8");
    }

    private static RawString draw(String text, String label, ErrorCorrectionLevel level, String letters) {
        ByteMatrix modules = modules(text, level, letters);
        int size = modules.getWidth() + 2 * MARGIN;
        return new RawString("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"code\" role=\"img\" aria-label=\""
                + label + "\" viewBox=\"0 0 " + size + " "
                + size
                + "\" shape-rendering=\"crispEdges\"><path fill=\"white\" d=\"M0 0h" + size + "v" + size + "h-" + size
                + "z\"/><path fill=\"black\" d=\"" + dark(modules) + "\"/></svg>");
    }

    /** Dark modules that stand beside each other are one piece, so that no light shows between them in print. */
    private static String dark(ByteMatrix modules) {
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                int from = x;
                while (x < modules.getWidth() && modules.get(x, y) == 1) {
                    x++;
                }
                if (x > from) {
                    int run = x - from;
                    path.append("M" + (from + MARGIN) + " " + (y + MARGIN) + "h" + run + "v1h-" + run + "z");
                }
            }
        }
        return path.toString();
    }

    private static ByteMatrix modules(String text, ErrorCorrectionLevel level, String letters) {
        try {
            return Encoder.encode(text, level, Map.of(EncodeHintType.CHARACTER_SET, letters))
                    .getMatrix();
        } catch (WriterException e) {
            throw new IllegalArgumentException("too long for a QR code: " + text, e);
        }
    }
}
