package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.INES;
import static org.benchtrail.core.method.Sheets.OLE;
import static org.benchtrail.core.method.Sheets.SUE;
import static org.benchtrail.core.method.Sheets.temperature;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.PictureMarked;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Marks lie on a picture of their own ticket, inside it, and on that picture only. */
class PictureMarkedTest {
    private static AttachmentAdded file(String mediaType, String digit) {
        return new AttachmentAdded("fan", mediaType, 9, digit.repeat(64), "The fan");
    }

    private static PictureMarked on(int picture) {
        return new PictureMarked(picture, MarkKind.ARROW, 0, 0, 1000, 1000, "");
    }

    private static List<String> fields(Runnable made) {
        return assertThrows(Invalid.class, made::run).problems().stream()
                .map(Problem::field)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "-1, 0, 9, 9, fromX",
        "0, -1, 9, 9, fromY",
        "0, 0, 1001, 9, toX",
        "0, 0, 9, 1001, toY",
        "5, 5, 5, 5, toX"
    })
    void placeOutsideThePicture_isRefused(int fromX, int fromY, int toX, int toY, String field) {
        assertEquals(List.of(field), fields(() -> new PictureMarked(2, MarkKind.ARROW, fromX, fromY, toX, toY, "")));
    }

    @Test
    void circleWithoutBreadth_isRefused_andWordsNeedNoSecondPlace() {
        assertEquals(List.of("toX"), fields(() -> new PictureMarked(2, MarkKind.CIRCLE, 5, 5, 5, 9, "")));
        assertEquals(
                new PictureMarked(2, MarkKind.TEXT, 5, 6, 5, 6, "Here"),
                new PictureMarked(2, MarkKind.TEXT, 5, 6, 4000, -1, "Here"));
        assertEquals(List.of("text"), fields(() -> new PictureMarked(2, MarkKind.TEXT, 5, 6, 5, 6, " ")));
    }

    @Test
    void textIsKeptAsTyped_butForControlCharacters() {
        assertEquals("<b>&amp;", new PictureMarked(2, MarkKind.CIRCLE, 1, 1, 2, 2, " <b>&amp;\n").text());
        assertEquals(List.of("text"), fields(() -> new PictureMarked(2, MarkKind.CIRCLE, 1, 1, 2, 2, "a\u001bb")));
    }

    @Test
    void whatIsNoPicture_orNoFileOfThisTicket_isNotMarked() {
        TicketFixture desk = Sheets.plain();
        int reading = desk.as(INES).records(temperature("60", "85"));
        int log = desk.as(INES).records(file("text/plain", "1"));
        for (int entry : new int[] {reading, log, 0, log + 7}) {
            Invalid refused = assertThrows(Invalid.class, () -> desk.as(INES).does(on(entry)));
            assertEquals("picture", refused.problems().get(0).field());
        }
    }

    @Test
    void whoeverWorks_marks_alsoWhileAHazardStands_butNotOnATicketThatHasEnded() {
        TicketFixture desk = Sheets.plain();
        int picture = desk.as(INES).records(file("image/jpeg", "1"));
        desk.as(INES).records(Sheets.hazard(Hazard.SMOKE));
        desk.as(OLE).records(on(picture));
        desk.as(SUE).records(new Cancelled("Sold", null));
        desk.as(OLE).lacks("ticket-cancelled", on(picture));
    }

    @Test
    void marksOnOnePicture_areAtMostFifty_untilOneIsWithdrawn() {
        TicketFixture desk = Sheets.plain();
        int picture = desk.as(INES).records(file("image/png", "1"));
        int mark = 0;
        for (int i = 0; i < PictureMarked.MOST; i++) {
            mark = desk.as(INES).records(on(picture));
        }
        assertThrows(Invalid.class, () -> desk.as(INES).does(on(picture)));
        desk.as(INES).records(new Corrected(mark, "Too many", null));
        desk.as(INES).records(on(picture));
    }

    @Test
    void pictureUnderAMark_isNotReplacedByAnother() {
        TicketFixture desk = Sheets.plain();
        int picture = desk.as(INES).records(file("image/png", "1"));
        int mark = desk.as(INES).records(on(picture));
        for (@Nullable
        AttachmentAdded other : new AttachmentAdded[] {file("image/png", "2"), file("text/plain", "1"), null}) {
            desk.as(INES).lacks("relied-on", new Corrected(picture, "Another", other));
        }
        desk.as(INES).records(new Corrected(picture, "A better name", file("image/jpeg", "1")));
        desk.as(INES).records(new Corrected(mark, "Not this", null));
        desk.as(INES).records(new Corrected(picture, "Another", file("image/png", "2")));
    }

    @Test
    void deviceTimeAndSize_areOfSensibleForm() {
        String sha = "1".repeat(64);
        for (String time : List.of("1969-12-31T23:59:59Z", "+10000-01-01T00:00:00Z")) {
            assertEquals(
                    List.of("deviceTime"),
                    fields(() -> new AttachmentAdded("a", "image/png", 9, sha, "b", Instant.parse(time), null)));
        }
        for (String size : List.of("0 x 9", "9x9", "<b>", "1234567 x 1")) {
            assertEquals(
                    List.of("scaledFrom"),
                    fields(() -> new AttachmentAdded("a", "image/png", 9, sha, "b", null, size)));
        }
    }
}
