package org.benchtrail.ticket.attachment;

import static org.benchtrail.ticket.attachment.CameraPictures.held;
import static org.benchtrail.ticket.attachment.CameraPictures.picture;
import static org.benchtrail.ticket.attachment.CameraPictures.taken;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import net.coobird.thumbnailator.util.exif.Orientation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CameraNotesTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final byte[] PLAIN = picture("jpg", 60, 40);

    /** With the offset that the camera noted, or else by the clock of the place, in winter and in summer. */
    @ParameterizedTest
    @CsvSource({
        "2026:11:20 08:15:00, +09:00, 2026-11-19T23:15:00Z",
        "2026:11:20 08:15:00, -03:30, 2026-11-20T11:45:00Z",
        "2026:11:20 08:15:00, '', 2026-11-20T07:15:00Z",
        "2026:06:20 08:15:00, '', 2026-06-20T06:15:00Z"
    })
    void pictureIsOfWhenItWasTaken(String noted, String offset, Instant at) {
        assertEquals(
                Optional.of(at), CameraNotes.of(taken(PLAIN, noted, offset)).taken(VIENNA));
    }

    /** A clock that was never set says nothing, and keeps no picture away. */
    @ParameterizedTest
    @CsvSource({
        "0000:00:00 00:00:00",
        "1969:12:31 23:00:00",
        "9999:12:31 23:59:59",
        "    :  :     :  :  ",
        "yesterday, at nine."
    })
    void timeThatIsNone_isNotTold(String noted) {
        assertEquals(Optional.empty(), CameraNotes.of(taken(PLAIN, noted, "")).taken(VIENNA));
    }

    @Test
    void notes_areCompleteInTheHead() {
        byte[] photo = held(taken(picture("jpg", 3000, 2000), "2026:11:20 08:15:00", ""), 6);
        CameraNotes notes = CameraNotes.of(Arrays.copyOf(photo, Math.min(photo.length, CameraNotes.HEAD)));
        assertEquals(Optional.of(Instant.parse("2026-11-20T07:15:00Z")), notes.taken(VIENNA));
        assertEquals(Orientation.RIGHT_TOP, notes.up());
    }

    @Test
    void fileWithoutNotes_tellsNothing() {
        for (byte[] file :
                new byte[][] {PLAIN, {}, "GIF89a".getBytes(StandardCharsets.US_ASCII), picture("png", 9, 9)}) {
            assertEquals(Optional.empty(), CameraNotes.of(file).taken(VIENNA));
            assertNull(CameraNotes.of(file).up());
        }
    }

    /** Whatever bytes come, nothing is thrown. */
    @Test
    void brokenNotes_tellNothing() {
        Random random = new Random(20261127);
        byte[] sound = held(taken(PLAIN, "2026:11:20 08:15:00", "+01:00"), 6);
        for (int i = 0; i < 5000; i++) {
            byte[] broken = sound.clone();
            for (int turned = random.nextInt(4); turned >= 0; turned--) {
                broken[2 + random.nextInt(140)] = (byte) random.nextInt();
            }
            byte[] cut = Arrays.copyOf(broken, random.nextInt(broken.length));
            CameraNotes.of(cut).taken(VIENNA);
            CameraNotes.of(broken).up();
        }
    }
}
