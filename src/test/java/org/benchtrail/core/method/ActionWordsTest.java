package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is answered outright of an action, held against its own words. */
class ActionWordsTest {
    private static ActionPlanned action(
            String what,
            boolean irreversible,
            boolean storage,
            @Nullable String part,
            @Nullable Boolean usesPart,
            @Nullable String against) {
        return new ActionPlanned(
                what,
                "It runs again",
                "Nobody",
                "Put it back",
                irreversible,
                storage,
                false,
                false,
                null,
                part,
                Set.of(),
                usesPart,
                against);
    }

    private static List<String> refused(ActionPlanned action) {
        TicketFixture desk = atStep(Step.PLAN);
        Invalid e = assertThrows(Invalid.class, () -> desk.as(INES).does(action));
        return e.problems().stream().map(Invalid.Problem::field).toList();
    }

    private static void taken(ActionPlanned action) {
        atStep(Step.PLAN).as(INES).records(action);
    }

    @ParameterizedTest
    @CsvSource({
        "Reinstall the system, irreversible touchesStorage",
        "WIPE the disk, irreversible touchesStorage",
        "Restore yesterday's files, touchesStorage",
        "Remove the old drive, touchesStorage",
        "Flash the firmware, irreversible",
        "Scrap the old case, irreversible",
        "Swap the fan, usesPart",
        "Fit a bigger fan, usesPart",
        "Replace the disk, touchesStorage usesPart"
    })
    void wordsThatSpeakForAYes_areAnsweredWithYes_orItIsSaidWhyNot(String what, String fields) {
        List<String> asked = List.of(fields.split(" "));
        assertEquals(
                asked.stream().sorted().toList(),
                refused(action(what, false, false, null, false, null)).stream()
                        .sorted()
                        .toList());
        taken(action(what, false, false, null, false, "It is said of something else"));
        taken(action(
                what,
                asked.contains("irreversible"),
                asked.contains("touchesStorage"),
                asked.contains("usesPart") ? "Another one" : null,
                asked.contains("usesPart"),
                null));
    }

    @Test
    void wordsThatSpeakForNothing_areBelieved() {
        taken(action("Clean the information desk's screen", false, false, null, false, null));
    }

    @Test
    void partAndAnswer_goTogether() {
        assertEquals(List.of("usesPart"), refused(action("Clean it", false, false, null, null, null)));
        assertEquals(List.of("part"), refused(action("Clean it", false, false, null, true, null)));
        assertEquals(List.of("usesPart"), refused(action("Clean it", false, false, "Fan", false, null)));
        taken(action("Clean it", false, false, "Fan", true, null));
    }

    @Test
    void whatIsNotAnsweredAtAll_isAskedFor() {
        Invalid e = assertThrows(
                Invalid.class,
                () -> new ActionPlanned(
                        "Clean it",
                        "Cool",
                        "Nobody",
                        "Put it back",
                        null,
                        null,
                        false,
                        false,
                        null,
                        null,
                        Set.of(),
                        false,
                        null));
        assertEquals(
                List.of("irreversible", "touchesStorage"),
                e.problems().stream().map(Invalid.Problem::field).toList());
    }

    @Test
    void cost_isReadAsAnAmount_andNothingIsNone() {
        assertEquals("84.5", costing(" 84,5 ").costAmount().toPlainString());
        assertEquals("0", costing(" ").costAmount().toPlainString());
        assertEquals("999999999.99", costing("999999999.99").costAmount().toPlainString());
    }

    private static ActionPlanned costing(String cost) {
        return Sheets.action(false, false, false, false, cost, null);
    }
}
