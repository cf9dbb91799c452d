package org.benchtrail.knowledge;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.text.PlainText;
import org.jspecify.annotations.Nullable;

/**
 * What a known cause says.
 *
 * @param causeId id in the cause catalogue; null if it is not listed there
 * @param shows how it shows: what a requester or technician observes
 * @param apart what told it apart from other causes
 * @param cure what cured it
 */
public record CauseText(
        String title, Category category, @Nullable String causeId, String shows, String apart, String cure) {
    static final int LINE = 300;
    static final int PARAGRAPH = 4_000;

    /** @throws Invalid naming each part that has to be put right */
    public CauseText {
        title = PlainText.line(title);
        causeId = causeId == null || causeId.isBlank() ? null : PlainText.line(causeId);
        shows = PlainText.paragraph(shows);
        apart = PlainText.paragraph(apart);
        cure = PlainText.paragraph(cure);
        Invalid.Collector problems = new Invalid.Collector()
                .require(!title.isEmpty(), "title", "Name the cause.")
                .require(title.length() <= LINE, "title", "Shorten this to 300 characters.")
                .require(category != null, "category", "Choose the kind of trouble.")
                .require(!shows.isEmpty(), "shows", "Say how it shows.")
                .require(causeId == null || causeId.length() <= LINE, "causeId", "Shorten this to 300 characters.")
                .require(causeId == null || PlainText.isText(causeId), "causeId", PlainText.WHAT_TO_DO);
        paragraph(problems, "title", title);
        paragraph(problems, "shows", shows);
        paragraph(problems, "apart", apart);
        paragraph(problems, "cure", cure);
        problems.throwIfAny();
    }

    private static void paragraph(Invalid.Collector problems, String field, String text) {
        problems.require(text.length() <= PARAGRAPH, field, "Shorten this to 4,000 characters.")
                .require(PlainText.isText(text), field, PlainText.WHAT_TO_DO);
    }

    /** Cut where a record is longer than a known cause may be. */
    static String atMost(int most, String text) {
        if (text.length() <= most) {
            return text;
        }
        boolean splits = Character.isHighSurrogate(text.charAt(most - 2));
        return text.substring(0, splits ? most - 2 : most - 1) + "…";
    }
}
