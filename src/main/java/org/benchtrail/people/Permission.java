package org.benchtrail.people;

/** What a person may do, apart from whose ticket it is. */
public enum Permission {
    /** Take tickets and work them through the steps. */
    WORK_TICKETS("work on tickets"),
    SEE_TICKETS("see tickets"),
    /** Find tickets by the name of who reported them. */
    READ_REQUESTERS("find tickets by who reported them"),
    /** Let one requirement go unmet, with a reason. */
    WAIVE("waive a requirement"),
    /** Approve a plan made by somebody else. */
    APPROVE("approve a plan"),
    /** Sign off the ticket of a trainee. */
    SIGN_AS_MENTOR("sign off a trainee's ticket"),
    /** Add to the shop's limits, and take out of them. */
    KEEP_LIMITS("keep the shop's limits"),
    /** Name a device that is not known yet. */
    ADD_DEVICES("add devices"),
    /** Keep places, teams and devices. */
    KEEP_SITE("keep places, teams and devices"),
    /** Decide about calendar, times by priority and policies. */
    SET_POLICIES("decide about calendar, times and policies"),
    MANAGE_ACCOUNTS("manage accounts"),
    OWN_TOKENS("have tokens for programs"),
    /** See which records were found not to hold, and look into them. */
    SEE_ALARMS("see the seal and alarms"),
    /** Say that the log goes on where what stands beside its key is lost. */
    KEEP_LOG("say that the log goes on without the note beside its key"),
    /** Propose, or agree, how a ticket goes on whose trail was found broken. */
    MEND_TRAILS("mend tickets whose trail is broken"),
    /** Check that the trail was not altered. */
    VERIFY_TRAIL("verify the trail"),
    /** State what will be looked at of a period, give reviews, and conclude. */
    PLAN_AUDITS("plan and conclude audits"),
    /** Review tickets that were drawn. */
    REVIEW("review tickets of an audit"),
    /** See what people have read of the reviews of their own work: a mentor of their own trainees. */
    COACH("see what people have read of the reviews of their work"),
    /** State what a test of the coach asks, before it begins. */
    STATE_TRIALS("state a test of the coach"),
    /** Write practice jobs, have them checked, and give them to trainees. */
    WRITE_PRACTICE("write practice jobs"),
    /** See figures over all tickets, and take them away as files. */
    SEE_FIGURES("see the figures"),
    /** Change the figures that rankings are made with: edit them, judge cases for them, go back. */
    KEEP_CATALOGUE("change the cause catalogue or what it learns"),
    /** Confirm or decline what another supervisor wants to change: figures, catalogue, limits. */
    DECIDE_PROPOSALS("propose, confirm or decline a change that takes two supervisors"),
    /** Confirm or flag a known cause, and put a draft or a flagged one right. */
    TEND_KNOWLEDGE("confirm, flag or correct known causes"),
    /** Retire, merge and split known causes, and change confirmed ones. */
    CURATE_KNOWLEDGE("retire, merge or split known causes, or change confirmed ones");

    private final String words;

    Permission(String words) {
        this.words = words;
    }

    /** The act in words, as in "may {@code work on tickets}". */
    public String words() {
        return words;
    }
}
