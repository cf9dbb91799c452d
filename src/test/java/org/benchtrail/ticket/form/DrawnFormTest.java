package org.benchtrail.ticket.form;

import static org.benchtrail.ticket.form.DrawnForm.field;
import static org.benchtrail.ticket.form.DrawnForm.paragraph;
import static org.benchtrail.ticket.form.FieldGroup.required;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.form.DrawnForm.Kind;
import org.junit.jupiter.api.Test;

class DrawnFormTest {
    private static final String ALONE =
            ", and a drawn form has fields for texts, numbers, a yes or no, and choices alone:"
                    + " give it fields in the template of its step.";

    private static List<DrawnForm.Field> fields(SheetForm form) {
        DrawnForm drawn = form.drawn();
        assertNotNull(drawn);
        return drawn.fields();
    }

    @Test
    void fields_areOfTheKindThatTheirComponentAsksFor() {
        SheetForm soak = SheetForm.of("soak", required("soak", SoakRun.class))
                .drawn(
                        "Run",
                        "for an hour",
                        "Save",
                        field("minutes", "Minutes"),
                        field("recurred", "It came back"),
                        field("note", "Note"),
                        paragraph("note", "More"));
        assertEquals(
                List.of(Kind.NUMBER, Kind.TICK, Kind.LINE, Kind.PARAGRAPH),
                fields(soak).stream().map(DrawnForm.Field::kind).toList());
        assertEquals("soak.minutes", fields(soak).get(0).name());
        assertTrue(soak.takes("soak.minutes"));
        SheetForm requester = SheetForm.of("who", required("requester", RequesterAnswered.class))
                .drawn("Requester", "", "Save", field("state", "Says"));
        assertEquals(Kind.CHOICE, fields(requester).get(0).kind());
        assertEquals(Option.of(RequesterState.class), fields(requester).get(0).options());
    }

    @Test
    void field_ofNoComponent_isRefused() {
        SheetForm soak = SheetForm.of("soak", required("soak", SoakRun.class));
        assertThrows(IllegalArgumentException.class, () -> soak.drawn("Run", "", "Save", field("hours", "Hours")));
    }

    /** A map or a record would else be asked for as a number, which nobody could fill in. */
    @Test
    void component_thatIsAMapOrARecord_isRefused() {
        SheetForm function = SheetForm.of("function", required("function", FunctionChecked.class));
        assertEquals(
                "answers of FunctionChecked is of type Map" + ALONE,
                assertThrows(
                                IllegalArgumentException.class,
                                () -> function.drawn("Functions", "", "Save", field("answers", "All of it")))
                        .getMessage());
        SheetForm check = SheetForm.of("check", required("check", CheckPlanned.class));
        assertEquals(
                "expected of CheckPlanned is of type ExpectedValue" + ALONE,
                assertThrows(
                                IllegalArgumentException.class,
                                () -> check.drawn("Check", "", "Save", field("expected", "Bounds")))
                        .getMessage());
    }
}
