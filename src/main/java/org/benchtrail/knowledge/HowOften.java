package org.benchtrail.knowledge;

/** How often, in words. */
final class HowOften {
    private HowOften() {}

    static String times(int count) {
        return count == 1 ? "once" : count + " times";
    }

    /** Such as "1 known cause" and "3 known causes". */
    static String of(int count, String noun) {
        return count + " " + (count == 1 ? noun : noun + "s");
    }

    /** Such as "found true 3 times, 2 of 3 by measurement"; "not found true a second time yet" for none. */
    static String confirmed(int confirmations, int measured) {
        if (confirmations == 0) {
            return "not found true a second time yet";
        }
        String often = "found true " + times(confirmations);
        if (measured == confirmations) {
            return often + " by measurement";
        }
        return measured == 0 ? often : often + ", " + measured + " of " + confirmations + " by measurement";
    }
}
