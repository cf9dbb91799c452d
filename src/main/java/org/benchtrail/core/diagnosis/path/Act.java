package org.benchtrail.core.diagnosis.path;

import java.util.Locale;
import java.util.Set;

/** A test that is made from the structure alone. What each says of where the fault is: {@link GenericRules}. */
public enum Act {
    LOOK("Look, smell, listen at the %s; lights, settings, messages.", "Is anything wrong to be seen?"),
    RESEAT("Take the %s off and seat it anew.", "Is the fault gone?"),
    SUBSTITUTE("Put in a %s that is known to be good.", "Is the fault gone?"),
    BYPASS("Take the %s out of the way, or go past it.", "Is the fault gone?"),
    MOVE("Put the suspect %s into a good place.", "Does the fault go with it?"),
    /** A measurement, or a good source put in, at a boundary between two segments. */
    POINT("", ""),
    /** Another device that shares segments. */
    SISTER("%s", "Has it the same fault?"),
    MINIMAL("%s", "Does it work then?"),
    /** The same reading at another time or load. */
    REPEAT("%s", "Is it bad only then?"),
    LOG("%s", "Which part does the entry of the time of the fault name?"),
    UNDO("%s", "Is the fault gone?"),
    /** A change of a part as such; only ever a listed question. */
    CHANGE("", "");

    /** Tests of one segment, of which each segment has at most one a kind. */
    static final Set<Act> OF_A_SEGMENT = Set.of(LOOK, RESEAT, SUBSTITUTE, BYPASS, MOVE);

    /** Tests of the whole category. */
    static final Set<Act> OF_THE_WHOLE = Set.of(SISTER, MINIMAL, REPEAT, LOG, UNDO);

    /** Their positive outcome leaves the device mended as it stands. */
    static final Set<Act> CURES = Set.of(SUBSTITUTE, BYPASS, UNDO);

    /** Done to one segment they tell partly the same, and are weighed as one group. */
    static final Set<Act> TOUCHING = Set.of(RESEAT, SUBSTITUTE, BYPASS, MOVE);

    private final String instruction;
    private final String question;

    Act(String instruction, String question) {
        this.instruction = instruction;
        this.question = question;
    }

    /** What to do, for a segment's name or the words of the file. */
    String instruction(String what) {
        return String.format(Locale.ROOT, instruction, what);
    }

    public String question() {
        return question;
    }

    /** As it is written in files and ids. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
