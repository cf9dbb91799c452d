package org.benchtrail.core.readin;

import static org.benchtrail.core.readin.Seen.assertRefused;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ReceivedTest {
    @Test
    void text_hasLineFeedsOnly_andNoMark() {
        assertEquals("a\nb\nc°", Received.text("\uFEFFa\r\nb\rc°".getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void whatIsNoText_isRefusedWithItsOffset() {
        assertRefused("offset 1", "no UTF-8", () -> Received.text(new byte[] {'a', (byte) 0xFF, 'b'}));
        assertRefused("offset 0", "UTF-16", () -> Received.text("\uFEFF1,2".getBytes(StandardCharsets.UTF_16LE)));
        assertRefused("offset 0", "UTF-16", () -> Received.text("1,2".getBytes(StandardCharsets.UTF_16)));
        assertRefused("offset 1", "zero byte", () -> Received.text(new byte[] {'a', 0, 'b'}));
        assertRefused("offset 2", "no UTF-8", () -> Received.text(new byte[] {'a', 'b', (byte) 0xC3}));
    }

    @Test
    void size_isLimited() {
        assertRefused("text", "nothing here", () -> Received.text(new byte[0]));
        assertRefused("text", "10,000,000 bytes", () -> Received.text(new byte[10_000_000]));
        assertRefused("text", "10,000,000 bytes", () -> Received.hex("00".repeat(5_000_000)));
        assertRefused("text", "nothing here", () -> Received.hex(" \n"));
        assertEquals(
                Received.MOST_BYTES,
                Received.text("1".repeat(Received.MOST_BYTES).getBytes(StandardCharsets.UTF_8))
                        .length());
    }

    @Test
    void hex_namesTheByteThatIsNone() {
        assertArrayEquals(new byte[] {0, (byte) 0xAB, 1}, Received.hex("0000: 00 ab\n0002: 01"));
        assertRefused("offset 1", "hexadecimal", () -> Received.hex("00 xy"));
    }
}
