package org.benchtrail.core.training;

import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchtrail.core.Invalid;

/**
 * A test of whether work at the first try is worse without the coach, as it is stated before it begins. Nothing of it is changed
 * afterwards: whoever wants another one states another plan beside it.
 *
 * @param margin percentage points from which on it counts as worse, 1 to 30
 * @param expected share in per cent that is met at the first try, by which the size is reckoned, 50 to 99
 * @param correlation of two requirements of one job, in per cent, 0 to 50
 * @param people whose jobs have to be over before any figure is given, 5 to 200
 * @param jobsEach jobs of one person with the coach, and as many without, 1 to 12
 */
public record CoachTrial(int margin, int expected, int correlation, int people, int jobsEach) {
    /** With fewer people no figure of a group is given. */
    public static final int LEAST_PEOPLE = 5;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double SURE = NORMAL.inverseCumulativeProbability(0.95);
    private static final double SEEN = NORMAL.inverseCumulativeProbability(0.80);

    /**
     * Requirements that a job of the test is judged by: those of which a practice device can tell, without the two that most jobs do
     * not ask for. What a job never came to counts as not met, so that nobody is better off for stopping.
     */
    public static final List<String> JUDGED = List.of(
            "onset-known",
            "changes-asked",
            "scope-known",
            "reproduced",
            "hazards-screened",
            "data-protected",
            "evidence-attached",
            "simple-things-first",
            "expectation-first",
            "result-recorded",
            "theory-supported",
            "invasive-guarded",
            "plan-approved",
            "cautions-taken",
            "data-still-protected",
            "actions-settled",
            "symptoms-gone",
            "readings-back",
            "function-checked",
            "requester-agrees",
            "cause-named",
            "effort-recorded");

    /** @throws Invalid naming what has to be put right, as the fields of the form that states a plan */
    public CoachTrial {
        Invalid.Collector problems = new Invalid.Collector()
                .require(margin >= 1 && margin <= 30, "margin", "Give 1 to 30 points.")
                .require(expected >= 50 && expected <= 99, "expected", "Give 50 to 99 per cent.")
                .require(correlation >= 0 && correlation <= 50, "correlation", "Give 0 to 50 per cent.")
                .require(
                        people >= LEAST_PEOPLE && people <= 200,
                        "people",
                        "Give 5 to 200 people: of fewer no figure is given.")
                .require(jobsEach >= 1 && jobsEach <= 12, "jobsEach", "Give 1 to 12 jobs.");
        problems.throwIfAny();
        int needed = jobs(occasions(margin, expected, JUDGED.size(), correlation), JUDGED.size());
        new Invalid.Collector()
                .require(
                        people * jobsEach >= needed,
                        "people",
                        "These are " + people * jobsEach + " jobs with the coach and as many without; to see so small a"
                                + " difference takes " + needed + ". Take more people or jobs, or a wider margin.")
                .throwIfAny();
    }

    /** By how much requirements of one job tell less than as many of different ones. */
    public double design() {
        return design(JUDGED.size(), correlation);
    }

    private static double design(int aJob, int correlation) {
        return 1 + (aJob - 1) * correlation / 100.0;
    }

    /**
     * Occasions with the coach, and as many without, that show it to be no worse by the margin with 80 %, one-sided at 5 %, if it is
     * none the worse: {@code (z.95 + z.80)^2 * 2 p (1 - p) / margin^2} times the design effect, rounded up.
     *
     * <p>Source: the usual size for two shares of which one shall not be worse, NIST/SEMATECH e-Handbook 7.2.4.2 with both terms and
     * equal shares; the design effect {@code 1 + (m - 1) rho} is Kish's, from memory.
     *
     * @param margin in percentage points
     * @param expected in per cent
     * @param aJob requirements of one job
     * @param correlation in per cent
     */
    public static int occasions(int margin, int expected, int aJob, int correlation) {
        double p = expected / 100.0;
        double delta = margin / 100.0;
        double exact = (SURE + SEEN) * (SURE + SEEN) * 2 * p * (1 - p) / (delta * delta) * design(aJob, correlation);
        return (int) Math.ceil(exact - 1e-9);
    }

    /** Jobs in which so many occasions are. */
    public static int jobs(int occasions, int aJob) {
        return (occasions + aJob - 1) / aJob;
    }

    public int occasionsNeeded() {
        return occasions(margin, expected, JUDGED.size(), correlation);
    }

    public int jobsNeeded() {
        return jobs(occasionsNeeded(), JUDGED.size());
    }

    public String question() {
        return "One person: what share of the requirements is met at the first try without the coach? Given with its interval, with no"
                + " verdict. All together: is that share worse without the coach than with it by " + margin
                + " points or more?";
    }

    public String stopRule() {
        return "Figures are given once " + people + " people have ended " + jobsEach + " jobs with the coach and "
                + jobsEach + " without, and never before; those are the people whose jobs ended first. A person's own"
                + " figure is given to them alone, once their own jobs are over.";
    }

    public String leftOut() {
        return "A job that is broken off for a live ticket, said before its debrief: another one takes its place. Nothing else. A job"
                + " that is given up counts, and what it never came to counts as not met.";
    }

    public String analysis() {
        return "A requirement is met if it was there at the first try to leave its step and the device does not say otherwise. Judged: "
                + String.join(", ", JUDGED)
                + ". Of each person, the share met with the coach less the share met without. It is not worse if the one-sided 95 %"
                + " upper bound of the mean of these differences, by Student's t with the scatter between people, is below "
                + margin
                + " points. Jobs come in pairs on one kind of device, one of them with the coach as the person has it, one without any"
                + " of it; devices that the person has not practised on come first; which of a pair is first is drawn from the"
                + " seed for the order. If it is not shown, texts fade later on this site: 85 % instead of 80 %.";
    }
}
