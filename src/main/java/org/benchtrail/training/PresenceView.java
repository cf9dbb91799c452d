package org.benchtrail.training;

import java.util.List;

/**
 * A dangerous act of a trainee, for which their mentor signs in.
 *
 * @param number of the ticket
 * @param about entry number of the check or action; 1 for a live measurement
 * @param what is done
 * @param cautions that guard it, by their titles
 * @param trainee name of who does it; empty where nobody who is a trainee has the ticket
 * @param mentor name of the mentor whom they have; empty if they have none
 * @param login of that mentor
 * @param here who is present, and until when that counts; empty if nobody is
 * @param starts whether somebody may sign in to be present now
 * @param ending entry number of the presence that is to be ended; 0 if there is none
 * @param said what the mentor said afterwards; empty while they have not
 */
record PresenceView(
        String number,
        String title,
        int version,
        int about,
        String what,
        List<String> cautions,
        String trainee,
        String mentor,
        String login,
        String here,
        boolean starts,
        int ending,
        String said) {}
