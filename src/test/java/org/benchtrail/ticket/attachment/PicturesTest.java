package org.benchtrail.ticket.attachment;

import static org.benchtrail.ticket.attachment.CameraPictures.held;
import static org.benchtrail.ticket.attachment.CameraPictures.picture;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.benchtrail.core.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PicturesTest {
    private static BufferedImage read(Optional<byte[]> small) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(small.orElseThrow()));
    }

    private static boolean isRed(BufferedImage image, int x, int y) {
        Color seen = new Color(image.getRGB(x, y));
        return seen.getRed() > 150 && seen.getBlue() < 100;
    }

    @ParameterizedTest
    @CsvSource({"jpg, 4000, 2000", "png, 2000, 4000", "gif, 700, 700", "bmp, 640, 10"})
    void largePicture_isMadeSmall(String form, int width, int height) throws IOException {
        BufferedImage small = read(Pictures.small(picture(form, width, height), 320));
        assertEquals(320, Math.max(small.getWidth(), small.getHeight()), 1);
        assertEquals(width / (double) height, small.getWidth() / (double) small.getHeight(), 0.05 * width / height);
        assertTrue(isRed(small, 2, small.getHeight() / 2));
    }

    @Test
    void smallPicture_isNotMadeLarger() throws IOException {
        assertEquals(40, read(Pictures.small(picture("png", 40, 20), 320)).getWidth());
    }

    /** 1 as it is, 3 on its head, 6 and 8 on a side; red is left, right, above and below. */
    @ParameterizedTest
    @CsvSource({"1, 200, 100, 10, 50", "3, 200, 100, 190, 50", "6, 100, 200, 50, 10", "8, 100, 200, 50, 190"})
    void picture_isTurnedAsTheCameraWasHeld(int orientation, int width, int height, int x, int y) throws IOException {
        BufferedImage small = read(Pictures.small(held(picture("jpg", 200, 100), orientation), 320));
        assertEquals(width, small.getWidth());
        assertEquals(height, small.getHeight());
        assertTrue(isRed(small, x, y));
    }

    /** The head of a picture of any size; what follows would unpack to it. */
    private static byte[] head(int width, int height) {
        ByteBuffer chunk = ByteBuffer.allocate(17).put("IHDR".getBytes(StandardCharsets.US_ASCII));
        chunk.putInt(width).putInt(height).put(new byte[] {8, 2, 0, 0, 0});
        CRC32 sum = new CRC32();
        sum.update(chunk.array());
        return ByteBuffer.allocate(33)
                .put(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'})
                .putInt(13)
                .put(chunk.array())
                .putInt((int) sum.getValue())
                .array();
    }

    @Test
    void pictureThatUnpacksTooLarge_isRefusedUnread() {
        assertDoesNotThrow(() -> Pictures.requireShowable(head(10_000, 6000)));
        Invalid refused = assertThrows(Invalid.class, () -> Pictures.requireShowable(head(10_001, 6000)));
        assertEquals("file", refused.problems().get(0).field());
        assertTrue(refused.getMessage().contains("at most 60 million"), refused.getMessage());
        assertEquals(Optional.empty(), Pictures.small(head(100_000, 100_000), 320));
    }

    @Test
    void whatIsNoPicture_isAFileLikeAnyOther() {
        byte[] text = "<html>".getBytes(StandardCharsets.UTF_8);
        assertDoesNotThrow(() -> Pictures.requireShowable(text));
        assertEquals(Optional.empty(), Pictures.small(text, 320));
        assertEquals(Optional.empty(), Pictures.small(head(100, 100), 320));
    }

    @Test
    void keptBytes_stayAsTheyCame() {
        byte[] kept = picture("png", 400, 200);
        byte[] before = kept.clone();
        Pictures.small(kept, 100);
        assertArrayEquals(before, kept);
    }
}
