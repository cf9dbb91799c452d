package org.benchtrail.ticket.attachment;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** Pictures as a camera would write them. */
public final class CameraPictures {
    private CameraPictures() {}

    /** Red on its left half, blue on its right. */
    public static byte[] picture(String form, int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = image.createGraphics();
        pen.setColor(Color.RED);
        pen.fillRect(0, 0, width / 2, height);
        pen.setColor(Color.BLUE);
        pen.fillRect(width / 2, 0, width - width / 2, height);
        pen.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, form, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** The picture as a camera writes it that was held another way: the note stands right behind the first two bytes. */
    public static byte[] held(byte[] jpeg, int orientation) {
        ByteBuffer note = ByteBuffer.allocate(36);
        note.putShort((short) 0xFFE1).putShort((short) 34).put("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
        note.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
        note.putShort((short) 1)
                .putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation);
        return ByteBuffer.allocate(jpeg.length + 36)
                .put(jpeg, 0, 2)
                .put(note.array())
                .put(jpeg, 2, jpeg.length - 2)
                .array();
    }
}
