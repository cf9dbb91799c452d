package org.benchtrail.platform.room;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoomTest {
    @ParameterizedTest
    @CsvSource({
        "1000,1000,ENOUGH",
        "100,1000,ENOUGH",
        "99,1000,LITTLE",
        "20,1000,LITTLE",
        "19,1000,HARDLY_ANY",
        "0,1000,HARDLY_ANY",
        "0,0,ENOUGH",
        "9000000000000000000,9100000000000000000,ENOUGH"
    })
    void room_byTheShareThatIsLeft(long free, long total, Room room) {
        assertEquals(room, Room.of(free, total));
    }
}
