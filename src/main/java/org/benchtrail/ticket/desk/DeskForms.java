package org.benchtrail.ticket.desk;

import static org.benchtrail.ticket.form.FieldGroup.required;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.ForecastSkipped;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.OfferWithdrawn;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;

/** What is done to a ticket at any step. */
public final class DeskForms {
    private static final String FOLLOW_UP = "hold.followUp";

    public static final List<SheetForm> ALL = List.of(
            SheetForm.of("clear", required("clear", StopWorkCleared.class)),
            SheetForm.of("precautions", required("taken", CautionsAcknowledged.class)),
            SheetForm.of("waive", required("waive", Waived.class)).about("waive.requirement"),
            SheetForm.of("hand-over", required("hand", HandedOver.class)),
            SheetForm.of("offer", required("offer", HandOverOffered.class)),
            SheetForm.of("end-offer", required("endOffer", OfferWithdrawn.class)),
            SheetForm.of("agree", required("agree", LesseningAgreed.class)).about("agree.correction"),
            SheetForm.of("ask", required("ask", Asked.class)).about("ask.requirement"),
            SheetForm.of("skip-forecast", required("skip", ForecastSkipped.class)),
            SheetForm.of("remark", required("remark", Remarked.class)),
            SheetForm.of("send-back", required("sendBack", SentBack.class)),
            SheetForm.of("addendum", required("addendum", Addendum.class)),
            SheetForm.of("countersign", required("countersign", AddendumCountersigned.class))
                    .about("countersign.addendum"),
            SheetForm.of("hold", special("hold", Held.class, DeskForms::hold)),
            SheetForm.of("resume", special("resume", Resumed.class, posting -> posting.add(new Resumed()))),
            SheetForm.of("escalate", required("escalate", Escalated.class)),
            SheetForm.of("return", required("return", Returned.class)),
            SheetForm.of("cancel", required("cancel", Cancelled.class)),
            SheetForm.of("reopen", required("reopen", Reopened.class)));

    private DeskForms() {}

    /** The follow-up is typed in the viewer's own zone. What is on hold already is held longer. */
    private static void hold(Posting posting) {
        String typed = posting.form().text(FOLLOW_UP);
        if (posting.sheet().course().hold() != null) {
            posting.add(new Resumed());
        }
        try {
            Map<String, String> known = typed.isEmpty()
                    ? Map.of()
                    : Map.of(
                            "followUp",
                            LocalDateTime.parse(typed)
                                    .atZone(posting.context().zone())
                                    .toInstant()
                                    .toString());
            posting.record("hold", Held.class, known);
        } catch (DateTimeParseException e) {
            posting.form().refuse(FOLLOW_UP, "Write the day and time of the follow-up as 2026-05-31T16:30.");
        }
    }
}
