package org.benchtrail.people;

import java.util.List;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;

/**
 * One's own account as text.
 *
 * @param namesBefore with the day until which each was borne
 * @param mentor name of one's mentor; empty if one has none
 * @param mentorOf names of those whose mentor one is
 * @param away absences that go on or are to come
 * @param standingInFor names of those who are away and whose place one takes
 * @param delegates who can stand in for one
 * @param secret of the token just made; empty otherwise
 */
public record MeView(
        String login,
        String name,
        List<String> namesBefore,
        String roles,
        String mentor,
        List<String> mentorOf,
        List<SessionLine> sessions,
        List<TokenLine> tokens,
        List<Option> scopes,
        List<AwayLine> away,
        List<String> standingInFor,
        List<Option> delegates,
        String secret,
        String notice,
        FormValues fill,
        List<Problem> problems) {

    /** @param here whether it is the one that looks */
    public record SessionLine(long id, String browser, String address, String made, String seen, boolean here) {}

    /** One token as a line of text. */
    public record TokenLine(
            long id,
            String name,
            String scopes,
            String made,
            String expires,
            String lastUsed,
            String state,
            boolean good) {}

    /** @param now whether it has begun */
    public record AwayLine(long id, String from, String until, String standsIn, boolean now) {}
}
