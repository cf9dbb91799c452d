package org.benchtrail.core.diagnosis.path;

/**
 * How probable the positive outcome of a test made from the structure is, by where the fault sits. Common practice, no source;
 * the same for every category, each to be outweighed by accepted cases.
 */
public final class GenericRules {
    /** A point is bad, and the fault lies on the side that it speaks for. */
    public static final double POINT_THERE = 0.95;
    /** A point is bad, and the fault lies on the other side: it may load the point. */
    public static final double POINT_BEYOND = 0.04;

    static final double POINT_OFF = 0.06;

    /** The fault is gone after what has it was replaced. */
    public static final double CURED_THERE = 0.95;
    /** The fault is gone after something else was replaced. */
    public static final double CURED_ELSEWHERE = 0.05;
    /** The fault is gone after the neighbour was replaced: swapping seats the contacts next to it. */
    public static final double CURED_NEIGHBOUR = 0.10;

    static final double SEATING_LISTED = 0.85;
    static final double SEATED_LISTED = 0.10;
    static final double SURVIVES = 0.05;
    static final double LOG_OWN = 0.55;
    static final double LOG_NONE = 0.40;
    static final double LOG_NAMELESS = 0.80;
    static final double CHANGED = 0.45;

    /** Where a part sits against a test. */
    enum Where {
        /** In what the test is done to, shares, loads, removes or speaks for. */
        IN,
        /** In a neighbour of it on any path. */
        NEXT,
        /** On the other side of a point. */
        BEYOND,
        ELSE
    }

    /** How often the positive outcome comes, by where the fault sits. */
    record Odds(double in, double next, double beyond, double otherwise) {
        Odds(double in, double next, double otherwise) {
            this(in, next, otherwise, otherwise);
        }

        double at(Where where) {
            return switch (where) {
                case IN -> in;
                case NEXT -> next;
                case BEYOND -> beyond;
                case ELSE -> otherwise;
            };
        }
    }

    private GenericRules() {}

    static Odds odds(PathAct act) {
        return switch (act) {
            case POINT -> new Odds(POINT_THERE, POINT_OFF, POINT_BEYOND, POINT_OFF);
            case SUBSTITUTE -> new Odds(CURED_THERE, CURED_NEIGHBOUR, CURED_ELSEWHERE);
            case BYPASS -> new Odds(0.92, CURED_NEIGHBOUR, CURED_ELSEWHERE);
            case MOVE -> new Odds(0.88, 0.04, 0.04);
            case RESEAT -> new Odds(0.30, 0.08, 0.03);
            case LOOK -> new Odds(0.45, 0.04, 0.04);
            case SISTER -> new Odds(0.85, 0.05, 0.05);
            case MINIMAL -> new Odds(0.92, 0.05, 0.05);
            case REPEAT -> new Odds(0.70, 0.15, 0.15);
            case UNDO -> new Odds(0.55, 0.05, 0.05);
            case LOG, CHANGE -> throw new IllegalArgumentException(act + " has more than two outcomes or its own rule");
        };
    }

    /** The same for one part: a listed cause that seating cures, or that a good spare does not cure, differs. */
    static double positive(PathAct act, Where where, PlacedPart place) {
        if (where == Where.IN && place.isListed()) {
            if (act == PathAct.RESEAT) {
                return place.seating() ? SEATING_LISTED : SEATED_LISTED;
            }
            if ((act == PathAct.SUBSTITUTE || act == PathAct.BYPASS) && place.survives()) {
                return SURVIVES;
            }
        }
        return odds(act).at(where);
    }
}
