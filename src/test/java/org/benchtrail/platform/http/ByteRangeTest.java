package org.benchtrail.platform.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ByteRangeTest {
    @ParameterizedTest
    @CsvSource({
        "bytes=0-3, 10, 0, 4",
        "bytes=0-0, 10, 0, 1",
        "bytes=9-9, 10, 9, 10",
        "bytes=4-, 10, 4, 10",
        "bytes=4-999999999999999999, 10, 4, 10",
        "bytes=-3, 10, 7, 10",
        "bytes=-30, 10, 0, 10",
        "bytes=10-, 10, 10, 10",
        "bytes=999999999999999999-, 10, 10, 10",
        "bytes=-0, 10, 10, 10",
        "bytes=0-, 0, 0, 0"
    })
    void part(String header, int length, int from, int to) {
        assertEquals(Optional.of(new ByteRange(from, to)), ByteRange.of(header, length));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "none",
            value = {
                "none",
                "bytes=-",
                "bytes=5-4",
                "bytes=0-1,3-4",
                "lines=0-1",
                "bytes=a-b",
                "bytes=0-1 ,",
                "bytes=9999999999999999999-"
            })
    void whole(String header) {
        assertEquals(Optional.empty(), ByteRange.of(header, 10));
    }
}
