package org.benchtrail.core.practice.job;

/** A device whose acts answer by what they are for. Each of these is asked of the device as it is once the act is counted. */
interface BenchDevice<A extends DeviceAct> extends PracticeDevice {
    Class<A> acts();

    BenchDevice<A> counted(A act);

    Answer asked(A act);

    Answer looked(A act);

    Answer measured(A act);

    Answer prepared(A act);

    Answer mended(A act);

    Answer tried(A act);

    @Override
    default Answer act(DeviceAct any) {
        A act = acts().cast(any);
        BenchDevice<A> then = counted(act);
        return switch (act.way()) {
            case ASK -> then.asked(act);
            case LOOK -> then.looked(act);
            case MEASURE -> then.measured(act);
            case PREPARE -> then.prepared(act);
            case MEND -> then.mended(act);
            case TRY -> then.tried(act);
        };
    }
}
