package org.benchtrail.ticket.attachment;

import static org.benchtrail.ticket.form.FieldGroup.special;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;

/** A mark on a picture, whose places are typed, or drawn by the page's script, in per cent. */
final class MarkForm {
    static final String GROUP = "mark";
    static final SheetForm FORM = SheetForm.of("mark", special(GROUP, PictureMarked.class, MarkForm::mark));
    static final List<Option> KINDS = Option.of(MarkKind.class);

    private static final List<String> PLACES = List.of("fromX", "fromY", "toX", "toY");

    private MarkForm() {}

    /** Words have one place: where they end is not asked. */
    private static void mark(Posting posting) {
        boolean words = posting.form().text(GROUP + ".mark").equals(MarkKind.TEXT.name());
        Map<String, Integer> places = new HashMap<>();
        for (String place : PLACES) {
            String typed = posting.form().text(GROUP + "." + place);
            if (words && place.startsWith("to")) {
                places.put(place, 0);
            } else if (typed.matches("\\d{1,3}([.,]\\d{1,2})?")) {
                places.put(place, thousandths(typed));
            } else {
                posting.form().refuse(GROUP + "." + place, "Write the place in per cent, 0 to 100.");
            }
        }
        if (places.size() == PLACES.size()) {
            posting.record(GROUP, PictureMarked.class, places);
        }
    }

    private static int thousandths(String perCent) {
        return new BigDecimal(perCent.replace(',', '.')).movePointRight(1).intValue();
    }
}
