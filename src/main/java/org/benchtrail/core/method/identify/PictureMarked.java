package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/**
 * A mark on a picture, kept apart from it: the bytes of the picture stay as they are. Places are in thousandths of its width and
 * height, 0 to 1000, from the upper left corner of the picture as it is shown upright.
 *
 * @param picture entry of the attached file
 * @param text what the mark says; empty if it only points
 */
public record PictureMarked(
        int picture,
        MarkKind mark,
        int fromX,
        int fromY,
        int toX,
        int toY,
        @FreeText String text) implements EvidenceFact {
    /** Thousandths. */
    public static final int WHOLE = 1000;

    /** On one picture; with more of them nothing of it is seen. */
    public static final int MOST = 50;

    /** Letters that a picture has room for. */
    private static final int LONGEST = 120;

    public PictureMarked {
        FieldChecks t = new FieldChecks();
        t.require(mark != null, "mark", "Choose an arrow, a circle or words.");
        if (mark == MarkKind.TEXT) {
            toX = fromX;
            toY = fromY;
            text = t.required("text", text, LONGEST, "Write the words that stand on the picture.");
        } else {
            text = t.optional("text", text, LONGEST);
        }
        requireInside(t, "fromX", fromX);
        requireInside(t, "fromY", fromY);
        requireInside(t, "toX", toX);
        requireInside(t, "toY", toY);
        t.require(mark != MarkKind.ARROW || fromX != toX || fromY != toY, "toX", "The arrow has no length.");
        t.require(mark != MarkKind.CIRCLE || (fromX != toX && fromY != toY), "toX", "The circle has no size.");
        t.done();
    }

    private static void requireInside(FieldChecks t, String field, int place) {
        t.require(place >= 0 && place <= WHOLE, field, "The mark has to lie on the picture.");
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    /** As the picture itself: it is looked at from where it is safe. */
    @Override
    public boolean possibleWhileStopped() {
        return true;
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(picture, AttachmentAdded.class, "picture"));
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        AttachmentAdded file =
                s.sheet().at(picture, AttachmentAdded.class, "picture").fact();
        if (!file.showsPicture()) {
            throw new Invalid("picture", "That file is no picture: nothing can be marked on it.");
        }
        long marks = s.sheet()
                .all(PictureMarked.class, m -> m.fact().picture == picture)
                .size();
        if (marks >= MOST) {
            throw new Invalid("picture", "There are " + MOST + " marks on this picture: withdraw one first.");
        }
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("on the picture of entry " + picture + ", " + mark.words(), text);
    }
}
