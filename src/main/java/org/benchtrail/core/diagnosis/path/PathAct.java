package org.benchtrail.core.diagnosis.path;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Making;

/** A test that is made from the structure alone. What each says of where the fault is: {@link GenericRules}. */
public enum PathAct {
    LOOK(
            "Look, smell, listen at the %s; lights, settings, messages.",
            "Is anything wrong to be seen?", "something wrong to be seen: %s", Making.Way.LOOK),
    RESEAT("Take the %s off and seat it anew.", "Is the fault gone?", "gone after seating anew: %s", Making.Way.TRY),
    SUBSTITUTE(
            "Put in a %s that is known to be good.", "Is the fault gone?", "gone with a good one: %s", Making.Way.TRY),
    BYPASS("Take the %s out of the way, or go past it.", "Is the fault gone?", "gone without it: %s", Making.Way.TRY),
    MOVE(
            "Put the suspect %s into a good place.",
            "Does the fault go with it?", "the fault goes with it: %s", Making.Way.TRY),
    /** A measurement, or a good source put in, at a boundary between two segments. */
    POINT("", "", "at %s", Making.Way.MEASURE),
    /** Another device that shares segments. */
    SISTER("%s", "Has it the same fault?", "another device has the same fault", Making.Way.LOOK),
    MINIMAL("%s", "Does it work then?", "works with the least that it needs", Making.Way.TRY),
    /** The same reading at another time or load. */
    REPEAT("%s", "Is it bad only then?", "bad only at another time or load", Making.Way.MEASURE),
    LOG("%s", "Which part does the entry of the time of the fault name?", "part that the log names", Making.Way.LOOK),
    UNDO("%s", "Is the fault gone?", "gone after undoing the change", Making.Way.TRY),
    /** A change of a part as such; only ever a listed question. */
    CHANGE("", "", "", Making.Way.ASK);

    /** Tests of one segment, of which each segment has at most one a kind. */
    static final Set<PathAct> OF_A_SEGMENT = Set.of(LOOK, RESEAT, SUBSTITUTE, BYPASS, MOVE);

    /** Tests of the whole category. */
    static final Set<PathAct> OF_THE_WHOLE = Set.of(SISTER, MINIMAL, REPEAT, LOG, UNDO);

    /** Their positive outcome leaves the device mended as it stands. */
    static final Set<PathAct> CURES = Set.of(SUBSTITUTE, BYPASS, UNDO);

    /** After their positive outcome the fault is gone, so that nothing shows it to a test. */
    static final Set<PathAct> MENDING = Set.of(RESEAT, SUBSTITUTE, BYPASS, UNDO);

    /** Done to one segment they tell partly the same, and are weighed as one group. */
    static final Set<PathAct> TOUCHING = Set.of(RESEAT, SUBSTITUTE, BYPASS, MOVE);

    private final String instruction;
    private final String question;
    private final String label;
    private final Making.Way way;

    PathAct(String instruction, String question, String label, Making.Way way) {
        this.instruction = instruction;
        this.question = question;
        this.label = label;
        this.way = way;
    }

    /** A statement that the question asks for, for a segment's or a point's name. */
    String label(String what) {
        return String.format(Locale.ROOT, label, what);
    }

    Making.Way way() {
        return way;
    }

    /** Whether it opens, stops or changes something wherever it is done. */
    boolean touches() {
        return way == Making.Way.TRY;
    }

    /** What to do, for a segment's name or the words of the file. */
    String instruction(String what) {
        return String.format(Locale.ROOT, instruction, what);
    }

    public String question() {
        return question;
    }

    /** The act of that word, as files and ids write it. */
    public static Optional<PathAct> ofWord(String word) {
        return Stream.of(values()).filter(a -> a.word().equals(word)).findFirst();
    }

    /** As it is written in files and ids. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
