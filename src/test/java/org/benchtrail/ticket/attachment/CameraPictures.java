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
        ByteBuffer notes = ByteBuffer.allocate(18);
        notes.putShort((short) 1);
        number(notes, 0x0112, 3, orientation << 16);
        return noted(jpeg, notes);
    }

    /**
     * The picture as a camera writes it that knows the time. Numbers of the tags and their form as in Exif 2.32 (CIPA DC-008-2019), from
     * memory.
     *
     * @param taken such as {@code 2026:11:20 08:15:00}, 19 characters
     * @param offset of its clock, such as {@code +01:00}; empty if it does not know it
     */
    public static byte[] taken(byte[] jpeg, String taken, String offset) {
        int words = 26 + 2 + 24 + 4;
        ByteBuffer notes = ByteBuffer.allocate(words - 8 + 28);
        notes.putShort((short) 1);
        number(notes, 0x8769, 4, 26);
        notes.putInt(0);
        notes.putShort((short) (offset.isEmpty() ? 1 : 2));
        text(notes, 0x9003, 20, words);
        text(notes, 0x9011, 7, words + 20);
        notes.position(words - 8);
        notes.put((taken + "\0" + offset + "\0").getBytes(StandardCharsets.US_ASCII));
        return noted(jpeg, notes);
    }

    private static void number(ByteBuffer notes, int tag, int type, int value) {
        notes.putShort((short) tag).putShort((short) type).putInt(1).putInt(value);
    }

    private static void text(ByteBuffer notes, int tag, int length, int at) {
        notes.putShort((short) tag).putShort((short) 2).putInt(length).putInt(at);
    }

    /** With a segment of notes whose first directory is that. */
    private static byte[] noted(byte[] jpeg, ByteBuffer directory) {
        byte[] notes = directory.array();
        return ByteBuffer.allocate(jpeg.length + 18 + notes.length)
                .put(jpeg, 0, 2)
                .putShort((short) 0xFFE1)
                .putShort((short) (16 + notes.length))
                .put("Exif\0\0MM".getBytes(StandardCharsets.US_ASCII))
                .putShort((short) 42)
                .putInt(8)
                .put(notes)
                .put(jpeg, 2, jpeg.length - 2)
                .array();
    }
}
